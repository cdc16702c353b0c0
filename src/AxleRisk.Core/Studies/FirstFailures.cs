using System.Collections.Immutable;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>Finds when each mode has used up what it can, and which is first.</summary>
/// <param name="scenario">The scenario.</param>
/// <param name="modes">The modes.</param>
/// <param name="assembly">Where their scatters come from.</param>
internal sealed class FirstFailures(Scenario scenario, ModeSet modes, ColumnSteps assembly)
{
    private readonly ImmutableArray<ColumnSteps.Source> scatters = [.. modes.Further.Select(m => assembly.SourceOf(m.ScatterIn(scenario)))];

    /// <summary>Lives and first modes of the first rows of a workspace whose rates are drawn and whose scale is filled.</summary>
    public void Fill(double[][] values, int count, Workspace workspace)
    {
        LifeRates rates = workspace.Rates!;
        workspace.Scale.AsSpan(0, count).CopyTo(rates.Limits);
        rates.Curves[0].FillInverse(count, rates.Limits, rates.Lives);
        rates.Lives.AsSpan(0, count).CopyTo(workspace.LifeKm);
        workspace.FirstMode.AsSpan(0, count).Clear();
        for (int mode = 0; mode < scatters.Length; mode++)
        {
            LifeModel.FillColumn(scatters[mode], values, rates.Limits.AsSpan(0, count));
            rates.Curves[mode + 1].FillInverse(count, rates.Limits, rates.Lives);
            for (int row = 0; row < count; row++)
            {
                if (rates.Lives[row] < workspace.LifeKm[row])
                {
                    (workspace.LifeKm[row], workspace.FirstMode[row]) = (rates.Lives[row], mode + 1);
                }
            }
        }
    }
}
