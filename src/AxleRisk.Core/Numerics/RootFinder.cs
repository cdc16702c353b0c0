namespace AxleRisk.Core.Numerics;

/// <summary>
/// Newton's method kept inside a bracket. MathNet's RobustNewtonRaphson asks for value and slope apart, where here most of their work
/// is the same, and ends at an absolute accuracy.
/// </summary>
internal static class RootFinder
{
    /// <summary>The zero in [low, high] of an increasing function, from its value and derivative.</summary>
    /// <param name="valueAndSlope">The function; the slope may be off, the bracket still closes.</param>
    /// <param name="low">Where the function is negative.</param>
    /// <param name="high">Where it is positive.</param>
    /// <param name="start">A first guess.</param>
    public static double Increasing(Func<double, (double Value, double Slope)> valueAndSlope, double low, double high, double start)
    {
        double x = start > low && start < high ? start : 0.5 * (low + high);
        for (int i = 0; i < 200; i++)
        {
            (double value, double slope) = valueAndSlope(x);
            if (value == 0)
            {
                return x;
            }

            if (value < 0)
            {
                low = x;
            }
            else
            {
                high = x;
            }

            double next = x - value / slope;
            if (!(next > low && next < high))
            {
                next = 0.5 * (low + high);
            }

            if (Math.Abs(next - x) <= 1e-15 * Math.Abs(next))
            {
                return next;
            }

            x = next;
        }

        return x;
    }
}
