using System.Collections.Immutable;
using AxleRisk.Core.Damage.Kernel;

namespace AxleRisk.Core.Studies;

/// <summary>
/// What a mode uses up over the stretches of a history: by a distance, all of those before it and the beginning of the one it lies
/// in. Each stretch has a curve of its own that begins where the stretch does.
/// </summary>
internal sealed class StretchedCurve : UsageCurve
{
    private readonly ImmutableArray<UsageCurve> curves;
    private readonly double[] fromKm;
    private readonly double[][] before;
    private readonly double[] left;
    private readonly double[] lives;

    /// <summary>Joins the curves of the stretches.</summary>
    /// <param name="curves">The curves, in order.</param>
    /// <param name="fromKm">Where each begins, km; the first at 0.</param>
    /// <param name="capacity">The most rows.</param>
    public StretchedCurve(ImmutableArray<UsageCurve> curves, IEnumerable<double> fromKm, int capacity)
    {
        (this.curves, this.fromKm) = (curves, [.. fromKm]);
        int padded = PaddedTail.Padded(capacity);
        before = Workspace.Columns(curves.Length, padded);
        left = new double[padded];
        lives = new double[padded];
    }

    /// <summary>Sums up the stretches of the first <paramref name="count"/> rows, whose curves are filled.</summary>
    public void Fill(int count)
    {
        for (int stretch = 1; stretch < curves.Length; stretch++)
        {
            Span<double> sum = before[stretch].AsSpan(0, count);
            curves[stretch - 1].FillUsed(count, fromKm[stretch], sum);
            for (int row = 0; row < count; row++)
            {
                sum[row] += before[stretch - 1][row];
            }
        }
    }

    /// <inheritdoc/>
    public override double Used(int row, double km)
    {
        int stretch = StretchOf(km);
        return before[stretch][row] + curves[stretch].Used(row, km);
    }

    /// <inheritdoc/>
    public override void FillUsed(int count, double km, Span<double> to)
    {
        int stretch = StretchOf(km);
        curves[stretch].FillUsed(count, km, to);
        for (int row = 0; stretch > 0 && row < count; row++)
        {
            to[row] += before[stretch][row];
        }
    }

    /// <inheritdoc/>
    public override void FillInverse(int count, double[] targets, double[] km)
    {
        for (int stretch = 0; stretch < curves.Length; stretch++)
        {
            for (int row = 0; row < count; row++)
            {
                left[row] = targets[row] - before[stretch][row];
            }

            curves[stretch].FillInverse(count, left, lives);
            double toKm = stretch + 1 < fromKm.Length ? fromKm[stretch + 1] : double.PositiveInfinity;
            for (int row = 0; row < count; row++)
            {
                if (stretch == 0 || left[row] > 0)
                {
                    km[row] = Math.Min(lives[row], toKm);
                }
            }
        }
    }

    // A distance where one ends belongs to the stretch that does.
    private int StretchOf(double km)
    {
        int stretch = fromKm.Length - 1;
        while (stretch > 0 && !(km > fromKm[stretch]))
        {
            stretch--;
        }

        return stretch;
    }
}
