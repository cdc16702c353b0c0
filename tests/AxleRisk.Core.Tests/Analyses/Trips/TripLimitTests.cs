using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Trips;

/// <summary>The speeds and loads that keep a target, remedies and combinations.</summary>
public sealed class TripLimitTests
{
    private static readonly StudySettings Settings = new(1_024, 1, "sobol");

    /// <summary>A rough leg, then a corrugated one whose corrugation shakes the wheel most at one speed.</summary>
    private static readonly Scenario Corrugated = TripCases.Stating(TripCases.Stating(TripCases.Stating(
        TripCases.Like(FiveLegs.Scenario, 20_000, (3, 4_000), (2, 8_000)),
        1, Quantities.CorrugatedShare, new Value.Certain(0.5)),
        1, Quantities.CorrugationWavelength, new Value.Certain(0.8)),
        1, Quantities.CorrugationRms, new Value.Certain(8));

    // From 8,192 on few of the vehicles sort the values; the limits are those of all nonetheless.
    [Theory]
    [InlineData(1_024)]
    [InlineData(LimitSearch.SortedFrom)]
    public void The_risk_at_a_limit_is_the_target(long vehicles)
    {
        StudySettings settings = Settings with { Evaluations = vehicles };
        Scenario scenario = TripCases.Like(FiveLegs.Scenario, 20_000, (3, 6_000), (2, 6_000));
        TripResult plan = TripRiskTests.Run(scenario, settings);
        TripResult result = TripRiskTests.Run(scenario, settings, new TripQuestion { Target = 0.8 * plan.Probability.Estimate });
        double target = result.Target!.Value;

        TripLimit leg = result.Limit(TripLeverKind.LegSpeed, "leg1")!;
        Assert.True(leg.HasUpperLimit);
        Interval speed = leg.Windows[0].To!.Value;
        Assert.InRange(speed.Estimate, speed.Low, speed.High);
        Assert.InRange(speed.Estimate, 1, 40); // below the planned 40 km/h, as the plan is above the target
        double At(Scenario s) => TripRiskTests.Run(s, settings).Probability.Estimate;
        Scenario slower = TripCases.Stating(scenario, 0, Quantities.Speed, new Value.Certain(speed.Estimate));
        Assert.Equal(target, At(slower), 0.002 * target);

        // At its cautious end the interval of the risk ends at the target, at the other end it begins there.
        Interval Of(double v) =>
            TripRiskTests.Run(TripCases.Stating(scenario, 0, Quantities.Speed, new Value.Certain(v)), settings).Probability;
        Assert.True(speed.Low < speed.Estimate && speed.Estimate < speed.High);
        Assert.Equal(target, Of(speed.Low).High, 0.002 * target);
        Assert.Equal(target, Of(speed.High).Low, 0.002 * target);

        Interval all = result.Limit(TripLeverKind.AllSpeeds)!.Windows[0].To!.Value;
        Scenario scaled = TripCases.Stating(
            TripCases.Stating(scenario, 0, Quantities.Speed, new Value.Certain(40 * all.Estimate)), 1, Quantities.Speed,
                new Value.Certain(50 * all.Estimate));
        Assert.Equal(target, At(scaled), 0.002 * target);
        Assert.True(all.Estimate > speed.Estimate / 40); // slowing both, each need slow less
    }

    [Fact]
    public void A_target_that_is_always_or_never_kept_is_told()
    {
        Scenario scenario = TripCases.Like(FiveLegs.Scenario, 20_000, (3, 6_000), (2, 100));
        TripLimit always = TripRiskTests.Run(scenario, Settings, new TripQuestion { Target = 0.9 }).Limit(TripLeverKind.AllSpeeds)!;
        Assert.True(always.IsAlwaysKept);
        Assert.False(always.HasUpperLimit);
        TripLimit never = TripRiskTests.Run(scenario, Settings, new TripQuestion { Target = 1e-6 }).Limit(TripLeverKind.LegSpeed, "leg2")!;
        Assert.Empty(never.Windows);
        Assert.True(never.Least.Estimate > 1e-6);
    }

    [Fact]
    public void A_risk_that_peaks_at_one_speed_leaves_a_range_below_and_one_above()
    {
        // Common practice, no source: a corrugation shakes the wheel most near wavelength times hop frequency, about
        // 0.8 m * 10 Hz = 29 km/h here, and less at higher speed.
        double[] speeds = [10, 15, 20, 25, 30, 35, 45, 60, 80, 100];
        double At(double v) => TripRiskTests.Run(TripCases.Stating(Corrugated, 1, Quantities.Speed, new Value.Certain(v)),
            Settings).Probability.Estimate;
        double[] risks = [.. speeds.Select(At)];
        int peak = Array.IndexOf(risks, risks.Max());
        Assert.InRange(peak, 1, speeds.Length - 2);

        double target = 0.5 * (risks[peak] + Math.Max(risks[0], risks[^1]));
        TripLimit limit = TripRiskTests.Run(Corrugated, Settings, new TripQuestion { Target = target })
            .Limit(TripLeverKind.LegSpeed, "leg2")!;
        Assert.Equal(2, limit.Windows.Length);
        Interval below = limit.Windows[0].To!.Value, above = limit.Windows[1].From!.Value;
        Assert.True(below.Estimate < speeds[peak] && speeds[peak] < above.Estimate);
        Assert.Null(limit.Windows[0].From);
        Assert.Null(limit.Windows[1].To);
        Assert.All(speeds.Zip(risks), x => Assert.Equal(x.Second <= target, x.First <= below.Estimate || x.First >= above.Estimate));
    }

    [Fact]
    public void A_limit_of_a_certain_vehicle_has_no_error_of_sampling()
    {
        Scenario scenario = TripCases.Like(TripCases.CertainVehicle, 20_000, (3, 20_000));
        double plan = TripRiskTests.Run(scenario, Settings).Probability.Estimate;
        Interval speed = TripRiskTests.Run(scenario, Settings, new TripQuestion { Target = 0.7 * plan })
            .Limit(TripLeverKind.AllSpeeds)!.Windows[0].To!.Value;
        Assert.Equal(speed.Low, speed.High, 0.002 * speed.Estimate);
    }

    [Fact]
    public void A_remedy_changes_the_trip_and_not_the_past()
    {
        Scenario scenario = TripCases.Like(FiveLegs.Scenario, 40_000, (3, 30_000)) with
        {
            Remedies =
            [
                new Remedy("nothing", null, [new Change.Times("axle.wall_mm", 1)]),
                new Remedy("slower", null, [new Change.Times("use.speed_factor", 0.8)]),
            ],
        };
        scenario = scenario with
        {
            Trip = scenario.Trip! with
            { Remedies = [new Remedy("new", 5, [new Change.ToValue("trip.already_driven_km", new Value.Certain(0))])] },
        };
        TripResult result = TripRiskTests.Run(scenario, Settings);
        TripRemedy Row(string name) => result.Remedies.Single(r => r.Remedy.Name == name);
        Assert.Equal(["new", "nothing", "slower"], result.Remedies.Select(r => r.Remedy.Name).Order());
        Assert.Equal(new Interval(1, 1, 1), Row("nothing").Ratio);
        Assert.False(Row("nothing").IsDistinct);
        Assert.Equal(result.Probability.Estimate, Row("nothing").Probability.Estimate, 1e-12);
        Assert.True(Row("slower").IsDistinct && Row("slower").Ratio.High < 1);

        // A new axle fails less often than in all vehicles, for those that broke theirs before are the harder driven ones; slower
        // from the start on is not slower from the beginning.
        double fresh = TripRiskTests.Run(TripCases.Like(FiveLegs.Scenario, 0, (3, 30_000)), Settings).Probability.Estimate;
        Assert.InRange(Row("new").Probability.Estimate, 0.5 * fresh, 0.97 * fresh);
        double alwaysSlow = TripRiskTests.Run(Remedy.Apply(scenario, scenario.Remedies[1]) with { Remedies = [] },
            Settings).Probability.Estimate;
        Assert.True(alwaysSlow < Row("slower").Probability.Estimate);
    }

    [Fact]
    public void The_worst_combinations_are_those_of_the_vehicles_that_set_out()
    {
        // Planted: one wheel in five stands far out. The search must find it, and its average must be the trip's risk.
        Scenario scenario = TripCases.Usual(FiveLegs.Scenario, 40_000, 20_000);
        scenario = scenario with
        {
            Inputs =
            [
                .. scenario.Inputs,
                new Input(
                    "axle.wheel_offset_mm", Quantities.WheelOffset, null,
                    new Value.Uncertain(new Core.Distributions.NumberChoice([0, 120], [0.8, 0.2]), Knowledge.Varies), false),
            ],
        };
        TripResult result = TripRiskTests.Run(scenario, new StudySettings(16_384, 1, "sobol"));
        Assert.Contains(result.Combinations[0].Members, m => m.Column == "axle.wheel_offset_mm" && m.Limit == 120);
        double average = result.Combinations[0].Probability.Estimate / result.Combinations[0].Lift.Estimate;
        Assert.Equal(result.Probability.Estimate, average, 0.05 * average); // those that set out are drawn, 1 % or so
        Assert.InRange(result.Searched!.Rows, 16_384 * (result.Reached.Low - 0.01), 16_384 * (result.Reached.High + 0.01));
    }

    [Fact]
    public void The_digits_do_not_depend_on_the_threads()
    {
        Scenario scenario = Corrugated with { Remedies = [new Remedy("slower", null, [new Change.Times("use.speed_factor", 0.8)])] };
        var question = new TripQuestion { Target = 0.02 };
        string[] answers = [.. new[] { 1, 3 }.Select(threads => Tell(TripRiskTests.Run(scenario, Settings, question, threads)))];
        Assert.Equal(answers[0], answers[1]);
    }

    [Fact]
    public void A_trip_leaves_the_columns_of_the_other_factors_as_they_are()
    {
        Scenario mixed = Corrugated with { MixConcentration = 40 };
        Scenario with = TripCases.Stating(mixed, 0, Quantities.Speed,
            new Value.Uncertain(new Core.Distributions.Uniform(20, 40), Knowledge.Varies));
        string[] usual = [.. FactorSet.Of(mixed).ColumnNames];
        string[] whole = [.. FactorSet.Of(Trip.Whole(with)).ColumnNames];
        Assert.Equal(usual, whole[..usual.Length]);
        Assert.Equal(["trip.leg1.speed_km_per_h"], whole[usual.Length..]);
    }

    [Fact]
    public void Too_many_vehicles_to_keep_are_refused() =>
        Assert.Throws<StudyException>(() => TripRiskTests.Run(Corrugated, new StudySettings(2_000_000, 1, "sobol")));

    // A remedy is compared with the plan, both evaluated again; a search for limits takes more tries the more levers there are, and the
    // number told beforehand is no less than what is spent and no more than three times that.
    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 3)]
    [InlineData(2, 4)]
    public void The_evaluations_told_beforehand_are_those_spent(int remedies, int times)
    {
        Remedy[] all = [new("a", null, [new Change.Times("axle.wall_mm", 1)]), new("b", null, [new Change.Times("axle.wall_mm", 1.1)])];
        Scenario scenario = Corrugated with
        {
            Remedies = [.. all.Take(remedies).Take(1)],
            Trip = Corrugated.Trip! with { Remedies = [.. all.Take(remedies).Skip(1)] },
        };
        Assert.Equal(times * 1_024, TripRiskTests.Run(scenario, Settings).AllEvaluations);
        Assert.Equal(times * 1_024, TripAnalysis.EvaluationsOf(scenario, 1_024, hasTarget: false));
        long spent = TripRiskTests.Run(scenario, Settings, new TripQuestion { Target = 0.02 }).AllEvaluations;
        long told = TripAnalysis.EvaluationsOf(scenario, 1_024, hasTarget: true);
        Assert.InRange(told, spent, 3 * spent);

        // Levers: all speeds, the load, and the speed of each leg.
        Scenario one = scenario with { Trip = scenario.Trip! with { Legs = [scenario.Trip.Legs[0]] } };
        long ofOne = TripAnalysis.EvaluationsOf(one, 1_024, hasTarget: true);
        Assert.Equal((told - (times * 1_024)) / 4, (ofOne - (times * 1_024)) / 3);
    }

    private static string Tell(TripResult r) => string.Join(
        "\n", r.Probability, r.Reached, string.Join(' ', r.Legs),
        string.Join(' ', r.Limits.Select(l => $"{l.Lever.Leg} {string.Join(' ', l.Windows)} {l.Least}")),
        string.Join(' ', r.Remedies.Select(x => $"{x.Probability} {x.Difference} {x.Ratio}")),
            string.Join(' ', r.Combinations.Select(c => c.Probability)));
}
