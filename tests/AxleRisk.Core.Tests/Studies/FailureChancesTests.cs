using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

/// <summary>What several modes make of one row.</summary>
public class FailureChancesTests
{
    private static readonly LifeModel Model = new(ThreeModes.Scenario);

    [Fact]
    public void Survival_is_the_product_of_normal_exponential_and_Weibull()
    {
        (Workspace workspace, _) = Median(Model);
        LifeRates rates = workspace.Rates!;
        const double km = 40_000;
        double fatigue = StandardNormal.Upper(Model.Scale.Standardised(km, workspace.DamagePerKm[0]));
        double yield = Math.Exp(-km * rates.Of(YieldMode.Name)[0][0]);
        // ISO 281:2007: reliability at a life of a1 rating lives, a1 = 0.05 + 0.95 (ln R / ln 0.9)^(2/3), solved for R.
        double lives = km * rates.Of(BearingMode.Name)[0][0];
        double bearing = Math.Pow(0.9, Math.Pow(Math.Max(0, lives - 0.05) / 0.95, 1.5));
        double failed = Model.Chances.FailureProbability(workspace, 0, km);
        Assert.Equal(1 - fatigue * yield * bearing, failed, 1e-9 * failed);
        Assert.InRange(failed, 1e-4, 0.999);
    }

    [Fact]
    public void A_block_of_hazards_is_that_of_its_rows_whatever_the_median_of_the_Miner_sum()
    {
        var scale = new LifeModel(FiveLegs.With(Quantities.MinerSum,
            new Value.Uncertain(new Core.Distributions.Lognormal(2.5, 0.29), Knowledge.Varies))).Scale;
        var fatigue = new ModeChance.Fatigue(scale);
        double[] used = [.. Enumerable.Range(0, 37).Select(i => Math.Pow(10, -4 + 0.2 * i))], hazards = new double[used.Length];
        fatigue.FillHazards(used, hazards);
        double sigma = Math.Sqrt(0.29 * 0.29 + Math.Pow(0.2 * Math.Log(10), 2));
        for (int i = 0; i < used.Length; i++)
        {
            // ln(Miner sum 10^scatter) is normal with mean ln 2.5.
            double z = Math.Log(used[i] / 2.5) / sigma;
            double exact = z < 0 ? -LogExp.LogP1(-StandardNormal.Cumulative(z)) : -Math.Log(StandardNormal.Upper(z));
            Assert.Equal(exact, fatigue.Hazard(used[i]), 1e-9 * exact);
            Assert.Equal(exact, hazards[i], 1e-9 * exact);
        }
    }

    // All factors at their medians: fatigue's life is scale over damage, half of such vehicles have their first yield by ln 2
    // over its rate.
    [Fact]
    public void The_life_is_the_earliest_of_the_modes()
    {
        (Workspace workspace, _) = Median(Model);
        double bearing = (0.05 + 0.95 * Math.Pow(Math.Log(0.5) / Math.Log(0.9), 2.0 / 3)) / workspace.Rates!.Of(BearingMode.Name)[0][0];
        double yield = Math.Log(2) / workspace.Rates.Of(YieldMode.Name)[0][0];
        double fatigue = 1 / workspace.DamagePerKm[0];
        Assert.Equal(Math.Min(fatigue, Math.Min(yield, bearing)), workspace.LifeKm[0], 1e-6 * workspace.LifeKm[0]);
    }

    [Fact]
    public void A_scenario_without_the_new_inputs_has_fatigue_alone()
    {
        var plain = new LifeModel(FiveLegs.Scenario);
        Assert.True(plain.Modes.IsPlain && plain.Scale.IsLognormal && plain.Chances.IsExact);
        Assert.Null(plain.CreateWorkspace(1).Rates);
        Assert.False(Model.Scale.IsLognormal);
    }

    [Fact]
    public void Ageing_of_nothing_changes_no_life_and_wear_shortens_it()
    {
        double still = Median(new LifeModel(FiveLegs.Scenario)).Workspace.LifeKm[0];
        double LifeWith(double wear, double rust) => Median(new LifeModel(ThreeModes.With(
            FiveLegs.Scenario, (Quantities.DamperWear, new Value.Certain(wear)),
                (Quantities.CorrosionRate, new Value.Certain(rust))))).Workspace.LifeKm[0];
        Assert.Equal(still, LifeWith(0, 0), 1e-9 * still);
        Assert.True(LifeWith(0.6, 0) < 0.95 * still);
        Assert.True(LifeWith(0, 0.5) < 0.95 * still);
    }

    // Within the ages evaluated the damage is the integral of the damage rates of vehicles of every age: against 20 slices, each
    // a scenario of its own with the wall that is left at that distance.
    [Fact]
    public void Damage_of_a_rusting_wall_is_the_integral_over_its_ages()
    {
        const double rate = 0.8;
        Scenario basis = FiveLegs.Scenario with { RequiredKm = 100_000 };
        double aged = Median(
            new LifeModel(ThreeModes.With(basis, (Quantities.CorrosionRate, new Value.Certain(rate))))).Workspace.DamagePerKm[0];
        double sum = 0;
        for (int i = 0; i < 20; i++)
        {
            double lost = rate * (i + 0.5) / 20;
            sum += Median(new LifeModel(ThreeModes.With(basis,
                (Quantities.CorrosionLoss, new Value.Certain(lost))))).Workspace.DamagePerKm[0] / 20;
        }

        Assert.Equal(sum, aged, 0.01 * sum); // trapezoids of a quarter of the distance
    }

    // The batch forms against their one-row twins, and what happens between two distances against 1 - S(to)/S(from).
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(17)]
    [InlineData(256)]
    public void All_rows_at_once_are_as_each_alone(int count)
    {
        Scenario ageing = ThreeModes.With(
            ThreeModes.Scenario, (Quantities.CorrosionRate, new Value.Certain(0.4)), (Quantities.DamperWear, new Value.Certain(0.3)));
        foreach (LifeModel model in new[] { Model, new LifeModel(FiveLegs.Scenario), new LifeModel(ageing) })
        {
            Workspace workspace = model.CreateWorkspace(256);
            double[][] values = model.CreateColumns(256);
            model.Draw(SamplingPlan.FromName("plain", 256), 3, "", 0, count, workspace, values);
            model.Evaluate(values, count, workspace);
            var failed = new double[count];
            var between = new double[count];
            foreach (double km in new[] { 3000.0, 40_000, 90_000 })
            {
                model.Chances.FillFailureProbabilities(workspace, count, 0, km, failed);
                model.Chances.FillFailureProbabilities(workspace, count, km, 1.5 * km, between);
                for (int row = 0; row < count; row++)
                {
                    double by = model.Chances.FailureProbability(workspace, row, km);
                    double later = model.Chances.FailureProbability(workspace, row, 1.5 * km);
                    Assert.Equal(by, failed[row], 1e-11 * by + 1e-300);
                    if (by < 0.999)
                    {
                        Assert.Equal((later - by) / (1 - by), between[row], 1e-9 * later + 1e-15);
                    }
                }
            }
        }
    }

    private static (Workspace Workspace, double[][] Values) Median(LifeModel model)
    {
        Workspace workspace = model.CreateWorkspace(1);
        double[][] values = model.CreateColumns(1);
        foreach (Factor factor in model.Factors.Factors)
        {
            for (int i = 0; i < factor.ColumnNames.Length; i++)
            {
                values[factor.FirstColumn + i][0] = factor.Median[i];
            }
        }

        model.Evaluate(values, 1, workspace);
        return (workspace, values);
    }
}
