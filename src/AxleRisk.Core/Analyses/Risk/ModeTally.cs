using System.Runtime.Intrinsics;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>
/// One thread's sums for a <see cref="ModeTable"/>: distance after distance, each over all rows of a block, eight at a time.
/// </summary>
internal sealed class ModeTally
{
    // Below it a probability is 0 to all digits that matter.
    private const double LeastHazard = 1e-18;

    private static readonly int Width = Vector512<double>.Count;

    private readonly FailureChances chances;
    private readonly int modes;
    private readonly double[][] sums;
    private readonly double[][] hazard;
    private readonly double[][] before;
    private readonly double[][] first;
    private readonly double[] allBefore;
    private readonly double[] failedBefore;
    private readonly Vector512<double>[] node;
    private readonly Vector512<double>[] failedBy;
    private readonly Vector512<double>[] byEarlier;

    public ModeTally(FailureChances chances, int capacity, int distances)
    {
        this.chances = chances;
        modes = chances.Modes.Length;
        int padded = (capacity + Width - 1) / Width * Width;
        sums = Workspace.Columns(2 + 2 * modes, distances);
        hazard = Workspace.Columns(modes, padded);
        before = Workspace.Columns(modes, padded);
        first = Workspace.Columns(modes, padded);
        (allBefore, failedBefore) = (new double[padded], new double[padded]);
        node = new Vector512<double>[sums.Length];
        (failedBy, byEarlier) = (new Vector512<double>[modes], new Vector512<double>[modes]);
    }

    /// <summary>Adds the first <paramref name="rows"/> rows of an evaluated workspace.</summary>
    public void Add(Workspace workspace, int rows, ModeTable table)
    {
        for (int row = 0; row < rows; row++)
        {
            table.FirstCounts[workspace.FirstMode[row]].AddLn(Math.Log(workspace.LifeKm[row]));
        }

        if (!chances.IsExact)
        {
            return;
        }

        foreach (double[] column in (double[][])[.. hazard, .. before, .. first, allBefore, failedBefore])
        {
            Array.Clear(column);
        }

        bool certain = false;
        for (int i = 0; i < table.Count; i++)
        {
            // Once all have failed for certain, and would without any one mode, the sums stay as they are.
            certain = certain || AddNode(workspace, rows, table.Km(i));
            for (int sum = 0; sum < sums.Length; sum++)
            {
                sums[sum][i] = Vector512.Sum(node[sum]);
            }
        }

        foreach ((ExactSum[] to, double[] from) in table.Sums().Zip(sums))
        {
            for (int i = 0; i < from.Length; i++)
            {
                to[i] = to[i].Plus(from[i]);
            }
        }
    }

    // Whether all rows have failed for certain, without any one mode too.
    private bool AddNode(Workspace workspace, int rows, double km)
    {
        for (int m = 0; m < modes; m++)
        {
            chances.FillHazards(m, workspace, rows, km, hazard[m]);
        }

        Array.Clear(node);
        bool certain = true;
        for (int row = 0; row < rows; row += Width)
        {
            certain &= AddRows(row, Math.Min(Width, rows - row));
        }

        return certain;
    }

    private bool AddRows(int row, int count)
    {
        Vector512<double> allOld = At(allBefore, row);
        Vector512<double> all = Vector512<double>.Zero;
        Vector512<double> failed = Vector512<double>.Zero;
        for (int m = 0; m < modes; m++)
        {
            Vector512<double> h = At(hazard[m], row);
            all += h;
            byEarlier[m] = failed;
            failedBy[m] = Failed(h);
            failed = Union(failed, failedBy[m]);
        }

        Vector512<double> counts = Vector512.GreaterThan(all, Vector512.Create(LeastHazard));
        failed &= counts;
        node[0] += failed;
        node[1] += failed * failed;

        // What fails between two distances fails by each mode in proportion to the hazard it has there.
        Vector512<double> more = failed - At(failedBefore, row);
        Vector512<double> rise = all - allOld;
        Vector512<double> fails = Vector512.GreaterThan(more, Vector512<double>.Zero);
        Vector512<double> part = more / rise;
        bool isInfinite = Vector512.EqualsAny(rise, Vector512.Create(double.PositiveInfinity));
        Vector512<double> byLater = Vector512<double>.Zero;
        Vector512<double> done = Vector512.Equals(failed, Vector512<double>.One);
        for (int m = modes - 1; m >= 0; m--)
        {
            Vector512<double> h = At(hazard[m], row);
            if (!isInfinite)
            {
                (At(first[m], row) + Vector512.ConditionalSelect(fails, part * (h - At(before[m], row)), Vector512<double>.Zero))
                    .CopyTo(first[m], row);
            }
            else
            {
                ShareOne(m, row, count, more, rise);
            }

            node[2 + m] += At(first[m], row);
            Vector512<double> without = Union(byEarlier[m], byLater) & counts;
            node[2 + modes + m] += without;
            byLater = Union(byLater, failedBy[m]);
            if (modes > 1)
            {
                done &= Vector512.Equals(without, Vector512<double>.One);
            }
        }

        for (int m = 0; m < modes; m++)
        {
            At(hazard[m], row).CopyTo(before[m], row);
        }

        all.CopyTo(allBefore, row);
        failed.CopyTo(failedBefore, row);
        return count < Width ? IsDone(done, count) : Vector512.EqualsAll(done.AsInt64(), Vector512<long>.AllBitsSet);
    }

    // Row by row: a hazard that becomes infinite takes all, in equal parts with others that do.
    private void ShareOne(int mode, int row, int count, Vector512<double> more, Vector512<double> rise)
    {
        for (int i = 0; i < count; i++)
        {
            if (!(more[i] > 0))
            {
                continue;
            }

            double h = hazard[mode][row + i];
            int infinite = hazard.Count(of => double.IsInfinity(of[row + i]));
            first[mode][row + i] += infinite == 0 ? more[i] * (h - before[mode][row + i]) / rise[i] : double.IsInfinity(h)
                ? more[i] / infinite : 0;
        }
    }

    private static bool IsDone(Vector512<double> done, int count)
    {
        ulong rows = (1UL << count) - 1;
        return (done.ExtractMostSignificantBits() & rows) == rows;
    }

    // The probability of either of two independent events; the digits of small ones stay, and a certain one leaves it at 1.
    private static Vector512<double> Union(Vector512<double> p, Vector512<double> q)
    {
        Vector512<double> greater = Vector512.Max(p, q);
        return greater + Vector512.Min(p, q) * (Vector512<double>.One - greater);
    }

    private static Vector512<double> Failed(Vector512<double> hazard) => -VectorExponential.MinusOne(-hazard);

    private static Vector512<double> At(double[] column, int row) => Vector512.LoadUnsafe(in column[row]);
}
