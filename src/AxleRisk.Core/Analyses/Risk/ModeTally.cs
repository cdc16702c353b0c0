using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>One thread's sums for a <see cref="ModeTable"/>, block by block.</summary>
internal sealed class ModeTally
{
    // Beyond them a probability is 0 or 1 to all digits that matter.
    private const double LeastHazard = 1e-18;
    private const double GreatestHazard = 40;

    private readonly ModeChances chances;
    private readonly double[][] sums;
    private readonly double[] hazard;
    private readonly double[] before;

    public ModeTally(ModeChances chances)
    {
        this.chances = chances;
        int modes = chances.Modes.Length;
        sums = Workspace.Columns(2 + 2 * modes, ModeTable.Nodes);
        hazard = new double[modes];
        before = new double[modes];
    }

    /// <summary>Adds the first <paramref name="rows"/> rows of an evaluated workspace.</summary>
    public void Add(Workspace workspace, int rows, ModeTable table)
    {
        for (int row = 0; row < rows; row++)
            table.FirstCounts[chances.Modes.IndexOf(workspace.Modes!.First[row])].AddLn(Math.Log(workspace.LifeKm[row]));
        if (!chances.IsExact)
            return;
        foreach (double[] column in sums)
            Array.Clear(column);
        for (int row = 0; row < rows; row++)
            AddRow(workspace.Rates!, row, table);
        foreach ((ExactSum[] to, double[] from) in table.Sums().Zip(sums))
        {
            for (int i = 0; i < from.Length; i++)
                to[i] = to[i].Plus(from[i]);
        }
    }

    private void AddRow(LifeRates rates, int row, ModeTable table)
    {
        Array.Clear(before);
        int modes = hazard.Length;
        double failedBefore = 0;
        double allBefore = 0;
        Span<double> first = stackalloc double[modes];
        first.Clear();
        bool certain = false;
        for (int node = 0; node < ModeTable.Nodes; node++)
        {
            double all = allBefore;
            if (!certain)
            {
                all = 0;
                double km = table.Km(node);
                for (int m = 0; m < modes; m++)
                    all += hazard[m] = chances.Hazard(chances.Modes[m], rates, row, km);
                certain = all > GreatestHazard;
            }

            if (!(all > LeastHazard))
                continue;
            double failed = -NearZero.ExpMinusOne(-all);
            Share(failed - failedBefore, all - allBefore, first);
            sums[0][node] += failed;
            sums[1][node] += failed * failed;
            for (int m = 0; m < modes; m++)
            {
                sums[2 + m][node] += first[m];
                sums[2 + modes + m][node] += Others(m);
            }

            hazard.CopyTo(before, 0);
            (failedBefore, allBefore) = (failed, all);
        }
    }

    // What fails between two distances fails by each mode in proportion to the hazard it has there.
    private void Share(double failed, double rise, Span<double> first)
    {
        if (!(failed > 0))
            return;
        int infinite = 0;
        foreach (double h in hazard)
            infinite += double.IsInfinity(h) ? 1 : 0;
        for (int m = 0; m < hazard.Length; m++)
        {
            first[m] += infinite == 0 ? failed * (hazard[m] - before[m]) / rise
                : double.IsInfinity(hazard[m]) ? failed / infinite
                : 0;
        }
    }

    private double Others(int mode)
    {
        double rest = 0;
        for (int m = 0; m < hazard.Length; m++)
            rest += m == mode ? 0 : hazard[m];
        return -NearZero.ExpMinusOne(-rest);
    }
}
