using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>One thread's sums for a <see cref="ModeTable"/>: distance after distance, each over all rows of a block.</summary>
internal sealed class ModeTally
{
    // Beyond them a probability is 0 or 1 to all digits that matter.
    private const double LeastHazard = 1e-18;
    private const double GreatestHazard = 40;

    private readonly FailureChances chances;
    private readonly int modes;
    private readonly double[][] sums;
    private readonly double[][] hazard;
    private readonly double[][] before;
    private readonly double[][] first;
    private readonly double[] all;
    private readonly double[] allBefore;
    private readonly double[] failed;
    private readonly double[] failedBefore;
    private readonly double[] others;

    public ModeTally(FailureChances chances, int capacity)
    {
        this.chances = chances;
        modes = chances.Modes.Length;
        sums = Workspace.Columns(2 + 2 * modes, ModeTable.Nodes);
        hazard = Workspace.Columns(modes, capacity);
        before = Workspace.Columns(modes, capacity);
        first = Workspace.Columns(modes, capacity);
        (all, allBefore) = (new double[capacity], new double[capacity]);
        (failed, failedBefore) = (new double[capacity], new double[capacity]);
        others = new double[capacity];
    }

    /// <summary>Adds the first <paramref name="rows"/> rows of an evaluated workspace.</summary>
    public void Add(Workspace workspace, int rows, ModeTable table)
    {
        for (int row = 0; row < rows; row++)
            table.FirstCounts[workspace.FirstMode[row]].AddLn(Math.Log(workspace.LifeKm[row]));
        if (!chances.IsExact)
            return;
        foreach (double[] column in (double[][])[.. before, .. first, allBefore, failedBefore])
            Array.Clear(column);
        for (int node = 0; node < ModeTable.Nodes; node++)
            AddNode(node, workspace, rows, table.Km(node));
        foreach ((ExactSum[] to, double[] from) in table.Sums().Zip(sums))
        {
            for (int i = 0; i < from.Length; i++)
                to[i] = to[i].Plus(from[i]);
        }
    }

    private void AddNode(int node, Workspace workspace, int rows, double km)
    {
        Span<double> total = all.AsSpan(0, rows);
        total.Clear();
        for (int m = 0; m < modes; m++)
        {
            chances.FillHazards(m, workspace, rows, km, hazard[m]);
            VectorColumns.Add(hazard[m].AsSpan(0, rows), total);
        }

        // A row that has failed for certain stays as it was.
        for (int row = 0; row < rows; row++)
        {
            if (!(allBefore[row] > GreatestHazard))
                continue;
            all[row] = allBefore[row];
            for (int m = 0; m < modes; m++)
                hazard[m][row] = before[m][row];
        }

        VectorColumns.Failed(total, failed.AsSpan(0, rows));
        double sum = 0;
        double squares = 0;
        for (int row = 0; row < rows; row++)
        {
            double p = all[row] > LeastHazard ? failed[row] : 0;
            sum += p;
            squares += p * p;
            Share(row, p);
            failedBefore[row] = p;
        }

        (sums[0][node], sums[1][node]) = (sum, squares);
        for (int m = 0; m < modes; m++)
        {
            sums[2 + m][node] = Sum(first[m], rows);
            for (int row = 0; row < rows; row++)
                others[row] = Others(row, m);
            VectorColumns.Failed(others.AsSpan(0, rows), others.AsSpan(0, rows));
            sums[2 + modes + m][node] = Sum(others, rows);
            hazard[m].AsSpan(0, rows).CopyTo(before[m]);
        }

        total.CopyTo(allBefore);
    }

    // What fails between two distances fails by each mode in proportion to the hazard it has there.
    private void Share(int row, double probability)
    {
        double rise = all[row] - allBefore[row];
        double more = probability - failedBefore[row];
        if (!(more > 0))
            return;
        if (double.IsFinite(rise))
        {
            for (int m = 0; m < modes; m++)
                first[m][row] += more * (hazard[m][row] - before[m][row]) / rise;
            return;
        }

        int infinite = hazard.Count(h => double.IsInfinity(h[row]));
        for (int m = 0; m < modes; m++)
            first[m][row] += double.IsInfinity(hazard[m][row]) ? more / infinite : 0;
    }

    // Of at least so much that it counts, as in the sum over all modes.
    private double Others(int row, int mode)
    {
        double rest = 0;
        for (int m = 0; m < modes && all[row] > LeastHazard; m++)
            rest += m == mode ? 0 : hazard[m][row];
        return rest;
    }

    private static double Sum(double[] column, int rows)
    {
        double sum = 0;
        for (int row = 0; row < rows; row++)
            sum += column[row];
        return sum;
    }
}
