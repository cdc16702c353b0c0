namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>
/// Rainflow counting by the three-point rule of ASTM E1049-85 (reapproved 2011), 5.4.4, as the signal comes in: a range that the next one
/// covers is a cycle; the first range of the history and what is left at its end are half cycles. Only the turning points not yet counted
/// are kept, and nothing is allocated for a cycle.
/// </summary>
/// <typeparam name="TSink">What takes the cycles.</typeparam>
/// <param name="sink">What takes the cycles.</param>
internal sealed class Rainflow<TSink>(TSink sink)
    where TSink : struct, ICycleSink
{
    private double[] points = new double[64];
    private int count;
    private TSink sink = sink;

    /// <summary>What took the cycles.</summary>
    public ref TSink Sink => ref sink;

    /// <summary>Takes the next turning point. Peaks and valleys alternate; the ends of the history count as turning points.</summary>
    public void AddTurningPoint(double point)
    {
        if (count == points.Length)
        {
            Array.Resize(ref points, 2 * count);
        }

        points[count++] = point;
        while (count >= 3)
        {
            double earlier = Math.Abs(points[count - 2] - points[count - 3]);
            if (Math.Abs(points[count - 1] - points[count - 2]) < earlier)
            {
                return;
            }

            double mean = 0.5 * (points[count - 2] + points[count - 3]);
            if (count == 3)
            {
                // The range begins at the start of the history: half a cycle, and the start moves on.
                sink.Add(earlier, mean, 0.5);
                points[0] = points[1];
                points[1] = points[2];
                count = 2;
            }
            else
            {
                sink.Add(earlier, mean, 1);
                points[count - 3] = points[count - 1];
                count -= 2;
            }
        }
    }

    /// <summary>Ends the history: what was not counted counts as half cycles.</summary>
    public void End()
    {
        for (int i = 1; i < count; i++)
        {
            sink.Add(Math.Abs(points[i] - points[i - 1]), 0.5 * (points[i] + points[i - 1]), 0.5);
        }

        count = 0;
    }
}
