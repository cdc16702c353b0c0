using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Trips;

/// <summary>The failure probability on a trip.</summary>
public sealed class TripRiskTests
{
    private static readonly StudySettings Few = new(256, 1, "sobol");

    [Theory]
    [InlineData(0, 200_000)]
    [InlineData(30_000, 20_000)]
    [InlineData(2_000_000, 5_000)] // most have failed before: P is a ratio of small numbers
    public void A_certain_vehicle_fails_as_the_lognormal_distribution_says(double before, double km)
    {
        // Source: P = (F(d1) - F(d0)) / (1 - F(d0)) by definition of conditional probability; F is MathNet's lognormal.
        // ln(Miner sum) and ln 10 times the scatter are independent and normal: their variances add.
        double perKm = DamagePerKm(TripCases.CertainVehicle);
        double sigma = Math.Sqrt((0.29 * 0.29) + Math.Pow(0.20 * Math.Log(10), 2));
        double F(double d) => MathNet.Numerics.Distributions.LogNormal.CDF(0, sigma, d);
        double expected = (F(perKm * (before + km)) - F(perKm * before)) / (1 - F(perKm * before));
        TripResult result = Run(TripCases.Usual(TripCases.CertainVehicle, before, km), Few);
        Assert.True(result.IsConditional);
        // The vector kernel rounds a leg alone otherwise than among five.
        Assert.Equal(expected, result.Probability.Estimate, 1e-6 * expected);
        Assert.Equal(1 - F(perKm * before), result.Reached.Estimate, 1e-9);
    }

    [Fact]
    public void A_trip_of_no_distance_breaks_nothing()
    {
        Scenario nowhere = TripCases.Like(FiveLegs.Scenario, 40_000, (3, 0), (4, 0));
        Scenario noLegs = TripCases.Like(FiveLegs.Scenario, 40_000);
        Assert.All(new[] { nowhere, noLegs }, s => Assert.Equal((0, 0, 0), Of(Run(s, Few).Probability)));
        Assert.Equal((0, 0, 0), Of(Run(nowhere, Few).Legs[1].Cumulative));
    }

    [Fact]
    public void Two_legs_in_a_row_are_one_leg_of_both_distances()
    {
        TripResult two = Run(TripCases.Like(FiveLegs.Scenario, 30_000, (3, 4_000), (3, 6_000)), Few);
        TripResult one = Run(TripCases.Like(FiveLegs.Scenario, 30_000, (3, 10_000)), Few);
        Assert.Equal(one.Probability.Estimate, two.Probability.Estimate, 1e-10);
        Assert.Equal(one.Probability.High, two.Probability.High, 1e-10);
    }

    [Fact]
    public void The_legs_make_up_the_trip()
    {
        TripResult result = Run(TripCases.Usual(FiveLegs.Scenario, 30_000, 20_000), new StudySettings(2_048, 1, "sobol"));
        Assert.Equal(1, result.Legs.Sum(l => l.Share.Estimate), 1e-12);
        Assert.Equal(result.Probability, result.Legs[^1].Cumulative);
        double survived = 1;
        foreach (TripLegRisk leg in result.Legs)
        {
            survived *= 1 - leg.Conditional.Estimate;
            Assert.Equal(1 - survived, leg.Cumulative.Estimate, 1e-12);
            Assert.InRange(leg.Conditional.Estimate, leg.Conditional.Low, leg.Conditional.High);
        }

        Assert.Equal([4_000, 10_000, 15_000, 19_000, 20_000], result.Legs.Select(l => l.EndKm));
    }

    [Fact]
    public void A_trip_of_the_usual_use_fails_as_the_risk_says()
    {
        // The same samples; risk sums over bins of damage, which costs it a relative error below 1e-4.
        var settings = new StudySettings(4_096, 3, "sobol");
        (RiskResult risk, _) = RiskAnalysis.Run(
            new LifeModel(FiveLegs.Scenario), settings, new RiskQuestion { DistancesKm = [30_000, 45_000] }, new RunOptions());
        double At(double km) => risk.Distances.Single(d => d.DistanceKm == km).Probability.Estimate;
        TripResult trip = Run(TripCases.Usual(FiveLegs.Scenario, 30_000, 15_000), settings);
        double expected = (At(45_000) - At(30_000)) / (1 - At(30_000));
        Assert.Equal(expected, trip.Probability.Estimate, 3e-4 * expected);
        Assert.Equal(1 - At(30_000), trip.Reached.Estimate, 1e-4);
    }

    [Fact]
    public void Counted_and_averaged_failures_agree()
    {
        // 10,000 plain rows, P below 0.06: the standard error of counting is below 0.0024; four of them are allowed.
        Scenario scenario = TripCases.Usual(FiveLegs.Scenario, 30_000, 20_000);
        var settings = new StudySettings(10_000, 5, "plain");
        TripResult averaged = Run(scenario, settings);
        TripResult counted = Run(scenario, settings, new TripQuestion { IsCounted = true });
        Assert.False(counted.IsConditional);
        Assert.Equal(averaged.Probability.Estimate, counted.Probability.Estimate, 0.0096);
        Assert.InRange(averaged.Probability.Estimate, 0.001, 0.06);
        Assert.True(counted.Probability.High - counted.Probability.Low > averaged.Probability.High - averaged.Probability.Low);
        Assert.All(averaged.Legs.Zip(counted.Legs), p => Assert.Equal(p.First.Conditional.Estimate, p.Second.Conditional.Estimate, 0.0096));
    }

    [Fact]
    public void Without_a_lognormal_scale_failures_are_counted()
    {
        Scenario uniform = FiveLegs.With(Quantities.MinerSum, new Value.Uncertain(new Uniform(0.7, 1.3), Knowledge.Varies));
        Assert.False(Run(TripCases.Usual(uniform, 0, 20_000), Few).IsConditional);
    }

    [Fact]
    public void A_load_stated_on_a_leg_holds_on_that_leg_alone()
    {
        // On a new axle a trip with a stated load fails as the usual use does with that payload.
        Scenario with = Loaded(FiveLegs.Scenario, 0);
        var load = new Value.Uncertain(new Normal(500, 50), Knowledge.Varies);
        Scenario one = TripCases.Stating(TripCases.Like(with, 0, (3, 20_000), (2, 5_000)), 0, Quantities.Payload, load);
        Scenario heavier = TripCases.Like(Loaded(FiveLegs.Scenario, 500), 0, (3, 20_000), (2, 5_000));
        Scenario lighter = TripCases.Like(with, 0, (3, 20_000), (2, 5_000));
        var settings = new StudySettings(4_096, 1, "sobol");
        double p = Run(one, settings).Legs[0].Conditional.Estimate;
        Assert.Equal(Run(heavier, settings).Legs[0].Conditional.Estimate, p, 0.01 * p);
        Assert.NotEqual(Run(lighter, settings).Legs[0].Conditional.Estimate, p);

        // The damage of the second leg is that without the load; only the vehicles that reach it differ.
        double second = Run(one, settings).Legs[1].Conditional.Estimate;
        Assert.Equal(Run(lighter, settings).Legs[1].Conditional.Estimate, second, 0.1 * second);
    }

    [Fact]
    public void An_axle_without_a_wall_breaks_on_the_first_leg_it_is_driven_on_and_reaches_no_later_start()
    {
        Scenario rusted = FiveLegs.Scenario with
        {
            Inputs = [.. FiveLegs.Scenario.Inputs,
                new Input("axle.corrosion_loss_mm", Quantities.CorrosionLoss, null, new Value.Certain(20), false)],
        };
        TripResult result = Run(TripCases.Like(rusted, 0, (3, 0), (2, 10), (1, 10)), Few, new TripQuestion { Target = 0.5 });
        Assert.Equal((1, 1, 1), Of(result.Probability));
        Assert.Equal([0, 1, double.NaN], result.Legs.Select(l => l.Conditional.Estimate));
        Assert.All(result.Limits, l => Assert.Empty(l.Windows));

        TripResult late = Run(TripCases.Like(rusted, 10, (2, 10)), Few, new TripQuestion { Target = 0.5 });
        Assert.Equal(0, late.Reached.Estimate);
        Assert.True(double.IsNaN(late.Probability.Estimate));
        Assert.Empty(late.Limits);
    }

    [Fact]
    public void The_distances_may_be_uncertain()
    {
        Scenario plain = TripCases.Like(TripCases.CertainVehicle, 30_000, (3, 10_000));
        Scenario spread = plain with
        {
            Trip = plain.Trip! with
            {
                Inputs =
                [
                    .. plain.Trip.Inputs.Select(i => i with
                        { Value = new Value.Uncertain(new Uniform(0.9 * i.Value.Nominal, 1.1 * i.Value.Nominal), Knowledge.Unknown) }),
                ],
            },
        };
        TripResult result = Run(spread, new StudySettings(1_024, 1, "sobol"));
        Assert.Equal(10_000, result.Km, 1e-9);
        double p = Run(plain, Few).Probability.Estimate;
        Assert.Equal(p, result.Probability.Estimate, 0.05 * p);
        Assert.True(result.Probability.High > result.Probability.Low);
    }

    [Fact]
    public void The_interval_covers_the_truth_as_often_as_it_says()
    {
        // 100 runs of 512 plain rows: a 95 % interval covers in 95 +- 2.2; four standard deviations are allowed.
        Scenario scenario = TripCases.Like(FiveLegs.Scenario, 30_000, (3, 10_000));
        double truth = Run(scenario, new StudySettings(65_536, 99, "sobol")).Probability.Estimate;
        int covered = Enumerable.Range(0, 100).AsParallel().Count(seed =>
            Run(scenario, new StudySettings(512, (ulong)seed, "plain"), threads: 1).Probability is var p && p.Low <= truth
                && truth <= p.High);
        Assert.InRange(covered, 87, 100);
    }

    [Property(MaxTest = 20)]
    public void More_distance_never_means_fewer_failures(PositiveInt km, NonNegativeInt more, NonNegativeInt before)
    {
        double first = 100.0 * km.Get, second = first + (100.0 * more.Get), start = 500.0 * before.Get;
        var settings = new StudySettings(64, 7, "sobol");
        double shorter = Run(TripCases.Like(FiveLegs.Scenario, start, (2, first)), settings, threads: 1).Probability.Estimate;
        double longer = Run(TripCases.Like(FiveLegs.Scenario, start, (2, second)), settings, threads: 1).Probability.Estimate;
        Assert.InRange(longer, shorter, 1);
    }

    internal static TripResult Run(Scenario scenario, StudySettings settings, TripQuestion? question = null, int threads = 2) =>
        TripAnalysis.Run(scenario, settings, question ?? new TripQuestion(), new RunOptions { Threads = threads });

    private static Scenario Loaded(Scenario scenario, double payloadKg) => scenario with
    {
        Inputs = [.. scenario.Inputs, new Input("vehicle.payload_kg", Quantities.Payload, null, new Value.Certain(payloadKg), false)],
    };

    private static double DamagePerKm(Scenario scenario)
    {
        var model = new LifeModel(scenario);
        Workspace workspace = model.CreateWorkspace(1);
        double[][] values = model.CreateColumns(1);
        model.Evaluate(values, 1, workspace);
        return workspace.DamagePerKm[0];
    }

    private static (double, double, double) Of(Core.Numerics.Interval p) => (p.Estimate, p.Low, p.High);
}
