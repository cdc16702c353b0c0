using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Ranking;

/// <summary>Which mode fails first by the required distance; one thread's buffers.</summary>
/// <param name="model">The scenario made ready, of several modes.</param>
/// <param name="capacity">The most rows of a block.</param>
internal sealed class FirstModes(LifeModel model, int capacity)
{
    private readonly double requiredKm = model.Scenario.RequiredKm;
    private readonly bool isExact = model.Chances.IsExact;
    private readonly ModeTable table = NewTable(model);
    private readonly ModeTally tally = new(model.Chances, capacity, NewTable(model).Count);

    /// <summary>Fills in each mode's failures as the first, over the rows last evaluated: averaged exactly, or counted.</summary>
    public void Fill(Workspace workspace, int rows, Span<double> failures)
    {
        failures.Clear();
        if (isExact)
        {
            table.Clear();
            tally.Add(workspace, rows, table);
            for (int mode = 0; mode < failures.Length; mode++)
            {
                failures[mode] = table.Mean(table.First[mode], 1, requiredKm);
            }

            return;
        }

        for (int row = 0; row < rows; row++)
        {
            if (workspace.LifeKm[row] < requiredKm)
            {
                failures[workspace.FirstMode[row]]++;
            }
        }
    }

    private static ModeTable NewTable(LifeModel model) =>
        new(model.Scenario.RequiredKm, model.Modes.Modes.Length, Stretches.BendsKm(model.Scenario));
}
