using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Trips;

/// <summary>Trips of vehicles that can yield and lose a bearing, and that age.</summary>
public sealed class TripModesTests
{
    private static readonly StudySettings Few = new(256, 1, "sobol");

    [Theory]
    [InlineData(0, 20_000)]
    [InlineData(30_000, 20_000)]
    [InlineData(300_000, 5_000)] // most have failed before
    public void A_certain_vehicle_survives_with_the_product_of_the_modes(double before, double km)
    {
        (double damage, double yields, double lives) = CertainModes.Rates(CertainModes.Scenario);
        double S(double at) => CertainModes.Survival(at * damage, at * yields, at * lives);
        TripResult result = TripRiskTests.Run(TripCases.Usual(CertainModes.Scenario, before, km), Few);
        double expected = (S(before) - S(before + km)) / S(before);
        Assert.True(result.IsConditional);
        Assert.Equal(S(before), result.Reached.Estimate, 1e-6 * S(before));
        // The vector kernel rounds a leg alone otherwise than among five.
        Assert.Equal(expected, result.Probability.Estimate, 1e-5 * expected);
        Assert.InRange(result.Probability.High - result.Probability.Low, 0, 1e-9);
    }

    // Each leg is a use of its own: its yields and rating lives are those of a scenario of that leg alone, not of all.
    [Fact]
    public void Every_leg_uses_up_its_own()
    {
        Scenario on = CertainModes.Scenario;
        TripResult result = TripRiskTests.Run(TripCases.Like(on, 0, (3, 4_000), (2, 6_000)), Few);
        double[] used = new double[3];
        double before = 1;
        foreach ((int leg, double km) in new[] { (3, 4_000.0), (2, 6_000) })
        {
            Scenario alone = on with
            {
                Legs = [on.Legs[leg] with { Share = 1 }],
                Inputs = [.. on.Inputs.Where(i => i.Leg is null || i.Leg == leg).Select(i => i.Leg is null ? i : i with { Leg = 0 })],
            };
            (double damage, double yields, double lives) = CertainModes.Rates(alone);
            used = [used[0] + (km * damage), used[1] + (km * yields), used[2] + (km * lives)];
            double after = CertainModes.Survival(used[0], used[1], used[2]);
            Assert.Equal(1 - (after / before), result.Legs[leg == 3 ? 0 : 1].Conditional.Estimate, 1e-5);
            before = after;
        }
    }

    // Four standard errors of counting, P about 0.2 of the 3,200 or so that set out: 4 sqrt(0.2 * 0.8 / 3200) = 0.028.
    [Fact]
    public void Counted_and_averaged_failures_agree()
    {
        Scenario scenario = TripCases.Usual(ThreeModes.Scenario, 15_000, 15_000);
        var settings = new StudySettings(4_000, 5, "plain");
        TripResult averaged = TripRiskTests.Run(scenario, settings);
        TripResult counted = TripRiskTests.Run(scenario, settings, new TripQuestion { IsCounted = true });
        Assert.InRange(averaged.Probability.Estimate, 0.05, 0.4);
        Assert.Equal(averaged.Probability.Estimate, counted.Probability.Estimate, 0.028);
        Assert.Equal(averaged.Reached.Estimate, counted.Reached.Estimate, 0.032);
        Assert.All(averaged.Legs.Zip(counted.Legs), p => Assert.Equal(p.First.Conditional.Estimate, p.Second.Conditional.Estimate, 0.028));
        Assert.NotEmpty(averaged.Combinations);
        Assert.True(counted.Probability.High - counted.Probability.Low > averaged.Probability.High - averaged.Probability.Low);
    }

    // P = E[1 - exp(-rate(strength) km)] over the lognormal yield strength, by the midpoint rule in its normal score; the other
    // modes are below 1e-15.
    [Fact]
    public void A_rare_trip_has_the_expected_yields()
    {
        const double km = 10;
        Scenario drawn = Strong(CertainModes.Scenario);
        double exact = ExpectedYields(drawn, km);
        TripResult result = TripRiskTests.Run(TripCases.Usual(drawn, 0, km), Few);
        Assert.InRange(exact, 1e-17, 1e-5);
        Assert.Equal(5, result.Rare.Length);
        VeryRareTests.AssertHolds(result.Probability, exact);
        Assert.Contains(result.Rare[3].Answer.States[0].DesignPoints[0].Coordinates, c => c.Name == "axle.largest_load_scatter");
    }

    // The trip is driven as worn as at its start: with a wall that has lost what it loses by then, and no more.
    [Theory]
    [InlineData(30_000)]
    [InlineData(400_000)] // beyond the last age of 5 required distances, where nothing changes any more
    public void An_ageing_vehicle_drives_the_trip_as_worn_as_at_its_start(double start)
    {
        const double km = 5_000, perKm = 0.1 / 100_000;
        Scenario ageing = ThreeModes.With(CertainModes.Scenario with { RequiredKm = 60_000 },
            (Quantities.CorrosionRate, new Value.Certain(1e5 * perKm)));
        Scenario worn = ThreeModes.With(CertainModes.Scenario,
            (Quantities.CorrosionLoss, new Value.Certain(perKm * Math.Min(start, 300_000))));
        TripResult result = TripRiskTests.Run(TripCases.Usual(ageing, start, km), Few);
        double[] used = UsedBy(ageing, start);
        (double damage, double yields, double lives) = CertainModes.Rates(worn);
        double reached = CertainModes.Survival(used[0], used[1], used[2]);
        double after = CertainModes.Survival(used[0] + (km * damage), used[1] + (km * yields), used[2] + (km * lives));
        Assert.Equal(reached, result.Reached.Estimate, 1e-6 * reached);
        Assert.Equal(1 - (after / reached), result.Probability.Estimate, 1e-4 * (1 - (after / reached)));
    }

    // A wall that is gone fails in fatigue and by yield at once: two infinite hazards.
    [Fact]
    public void Modes_that_are_both_certain_to_have_failed_break_the_axle_once()
    {
        Scenario rusted = ThreeModes.With(CertainModes.Scenario, (Quantities.CorrosionLoss, new Value.Certain(20)));
        TripResult result = TripRiskTests.Run(TripCases.Like(rusted, 0, (3, 0), (2, 10), (1, 10)), Few);
        Assert.Equal(1, result.Probability.Estimate);
        Assert.Equal([0, 1, double.NaN], result.Legs.Select(l => l.Conditional.Estimate));
        Assert.Equal(0, TripRiskTests.Run(TripCases.Like(rusted, 10, (2, 10)), Few).Reached.Estimate);
    }

    internal static Scenario Strong(Scenario scenario) => scenario with
    {
        Inputs = [.. scenario.Inputs.Select(i => i.Quantity == Quantities.YieldStrength
            ? i with { Value = new Value.Uncertain(Lognormal.FromMedianAndCov(330, 0.07), Knowledge.Varies) } : i)],
    };

    internal static double ExpectedYields(Scenario scenario, double km)
    {
        const int points = 2_000;
        var model = new LifeModel(scenario);
        Workspace workspace = model.CreateWorkspace(points);
        double[][] values = model.CreateColumns(points);
        foreach (Factor factor in model.Factors.Factors)
        {
            values[factor.FirstColumn].AsSpan().Fill(factor.Median[0]);
        }

        var strength = (ScalarFactor)model.Factors.Find("axle.yield_mpa")!;
        double ScoreOf(int i) => -10 + 20 * (i + 0.5) / points;
        for (int i = 0; i < points; i++)
        {
            values[strength.FirstColumn][i] = ScoreOf(i) < 0
                ? strength.Distribution!.Quantile(StandardNormal.Cumulative(ScoreOf(i)))
                    : strength.Distribution!.UpperQuantile(StandardNormal.Upper(ScoreOf(i)));
        }

        model.Evaluate(values, points, workspace);
        double[] rates = workspace.Rates!.Of(YieldMode.Name)[0];
        return Enumerable.Range(0, points)
            .Sum(i => -Math.Exp(-rates[i] * km) is var minus ? StandardNormal.Density(ScoreOf(i)) * 20 / points
            * (rates[i] * km < 1e-5 ? rates[i] * km : 1 + minus) : 0);
    }

    private static double[] UsedBy(Scenario scenario, double km)
    {
        var model = new LifeModel(scenario);
        Workspace workspace = model.CreateWorkspace(1);
        double[][] values = model.CreateColumns(1);
        foreach (Factor factor in model.Factors.Factors)
        {
            values[factor.FirstColumn][0] = factor.Median[0];
        }

        model.Evaluate(values, 1, workspace);
        return [.. Enumerable.Range(0, 3).Select(mode => FailureChances.Used(mode, workspace, 0, km))];
    }
}
