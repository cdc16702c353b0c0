using AxleRisk.Core.Distributions;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

public sealed class KeptRatesTests
{
    private static readonly Scenario Ageing = ThreeModes.With(ThreeModes.Scenario, (Quantities.DamperWear, new Value.Certain(0.3)),
        (Quantities.CorrosionRate, new Value.Uncertain(new Lognormal(2, 1), Knowledge.Varies)));

    // Rows kept after their block answer as the block does, at a distance of each, some of them beyond the end of the wall.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Rows_put_back_have_the_probabilities_they_had(bool ages)
    {
        var model = new LifeModel(ages ? Ageing : ThreeModes.Scenario);
        foreach (int rows in (int[])[1, 7, 8, 9, 16, 21])
        {
            Workspace workspace = model.CreateWorkspace(rows);
            double[][] values = model.CreateColumns(rows);
            model.Draw(SamplingPlan.FromName("plain", rows), 1, "kept", 0, rows, workspace, values);
            model.Evaluate(values, rows, workspace);
            var kept = new KeptRates(workspace.Rates!, rows + 3);
            kept.Keep(workspace.Rates!, 3, rows);
            double[] km = [.. Enumerable.Range(0, rows).Select(i => 500 * Math.Pow(2, i % 11))];
            double[] expected = [.. km.Select((x, i) => model.Chances.FailureProbability(workspace, i, x))];
            if (ages)
            {
                km[0] = workspace.Damage.WallLastsKm[0] * 1.001;
                expected[0] = 1;
            }

            LifeRates rates = model.CreateRates(rows)!;
            double[] failed = new double[rows];
            kept.Restore(rates, 3, rows);
            model.Chances.FillFailureProbabilities(rates, km, failed, new double[rows]);
            for (int i = 0; i < rows; i++)
            {
                Assert.Equal(expected[i], failed[i], 1e-12);
            }
        }
    }
}
