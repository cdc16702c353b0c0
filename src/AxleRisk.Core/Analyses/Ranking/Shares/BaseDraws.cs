using System.Collections.Immutable;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Ranking.Shares;

/// <summary>
/// Draws the two independent base samples of a replicate. They stand in one plan of twice the columns, so that a
/// low-discrepancy plan fills the space of both together.
/// </summary>
internal sealed class BaseDraws(LifeModel model, StudySettings settings, long pairs)
{
    private readonly int columns = model.Factors.ColumnNames.Length;
    private readonly SamplingPlan plan = SamplingPlan.FromName(settings.Sampling, pairs);

    /// <summary>Draws base rows; see <see cref="ShareSample.Draw"/>.</summary>
    public void Draw(
        int replicate, bool second, long first, double[][] values, ImmutableArray<Factor> dependent, double[][] scores)
    {
        int count = values[0].Length;
        double[][] unit = Workspace.Columns(columns, count);
        for (int column = 0; column < columns; column++)
        {
            string stream = $"{model.Factors.ColumnNames[column]}/shares/{(second ? "B" : "A")}/r{replicate}";
            plan.Fill(new StreamKey(settings.Seed, stream), column + (second ? columns : 0), first, unit[column]);
        }

        model.Factors.Map(unit, values, count);
        for (int m = 0; m < dependent.Length; m++)
        {
            FactorDependence.ToScores(unit[dependent[m].FirstColumn], scores[m]);
        }
    }
}
