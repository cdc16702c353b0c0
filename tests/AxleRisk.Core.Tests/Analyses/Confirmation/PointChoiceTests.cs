using AxleRisk.Core.Analyses.Confirmation;
using AxleRisk.Core.Damage.TimeDomain;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Confirmation;

public sealed class PointChoiceTests
{
    private static readonly LifeModel Model = new(FiveLegs.Scenario);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(6)]
    [InlineData(7)]
    public void There_are_as_many_points_as_asked_for_each_another_vehicle(int points)
    {
        ChosenPoint[] chosen = [.. PointChoice.Choose(Model, points, 5)];
        Assert.Equal(points + 1, chosen.Length);
        Assert.Equal("base case", chosen[0].Name);
        Assert.Equal((points + 1) / 2, chosen.Count(p => p.Name.StartsWith("near failure", StringComparison.Ordinal)));
        Assert.Equal(points / 2, chosen.Count(p => p.Name.StartsWith("life at", StringComparison.Ordinal)));
        Assert.Equal(chosen.Length, chosen.Select(p => p.Name).Distinct().Count());
        Assert.Equal(chosen.Length, chosen.Select(p => string.Join(" ", p.Values)).Distinct().Count());
        Assert.Equal(Model.Factors.Factors.SelectMany(f => f.Nominal), chosen[0].Values);
    }

    // More points than lie between two places of the spread, so that both kinds meet: with 4096 points every vehicle is taken once.
    [Fact]
    public void All_the_sample_can_be_taken_and_no_vehicle_twice()
    {
        ChosenPoint[] chosen = [.. PointChoice.Choose(Model, PointChoice.Sampled, 5)];
        Assert.Equal(PointChoice.Sampled + 1, chosen.Length);
        Assert.Equal(PointChoice.Sampled + 1, chosen.Select(p => p.Values[0]).Distinct().Count());
        Assert.Equal(PointChoice.Sampled + 1, PointChoice.Choose(Model, PointChoice.Sampled + 50, 5).Length);
    }

    [Fact]
    public void Points_stand_where_their_names_say()
    {
        // The places of 4 of the spread are 1/8, 3/8, 5/8, 7/8; a rank of 4096 is known to within a few of 4096 from a sample as large.
        ChosenPoint[] chosen = [.. PointChoice.Choose(Model, 8, 5)];
        Assert.Equal(["life at 13 %", "life at 38 %", "life at 63 %", "life at 88 %"], chosen[5..].Select(p => p.Name));
        Assert.Equal(["near failure 1", "near failure 2", "near failure 3", "near failure 4"], chosen[1..5].Select(p => p.Name));
        double[] all = [.. Lives([.. PointChoice.Choose(Model, PointChoice.Sampled, 5).Skip(1)]).Order()];
        double[] lives = Lives(chosen);
        for (int i = 0; i < 4; i++)
        {
            Assert.Equal((i + 0.5) / 4, all.Count(x => x < lives[5 + i]) / (double)PointChoice.Sampled, 1e-3);
        }

        // Of the whole sample those nearest to the required distance on the logarithm's scale, nearest first.
        double required = FiveLegs.Scenario.RequiredKm;
        Assert.Equal(all.Select(x => Math.Abs(Math.Log(x / required))).Order().Take(4),
            lives[1..5].Select(x => Math.Abs(Math.Log(x / required))), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.NotEqual(chosen[5].Values, PointChoice.Choose(Model, 8, 6)[5].Values);
    }

    // A scatter of 400 or -400 powers of ten is no life at all or one without end: neither is a point to confirm.
    [Fact]
    public void Vehicles_that_never_run_or_never_fail_are_not_chosen()
    {
        var scatter = new Value.Uncertain(new Core.Distributions.NumberChoice([-400, 0, 400], [0.25, 0.5, 0.25]), Knowledge.Varies);
        var model = new LifeModel(FiveLegs.With(Quantities.LifeScatter, scatter));
        int column = model.Factors.ColumnNames.IndexOf("fatigue.log10_life_scatter");
        ChosenPoint[] chosen = [.. PointChoice.Choose(model, PointChoice.Sampled, 5).Skip(1)];
        Assert.All(chosen, p => Assert.Equal(0, p.Values[column]));

        // Binomial(4096, 1/2): four standard deviations of 32.
        Assert.InRange(chosen.Length, 2048 - 128, 2048 + 128);
    }

    [Fact]
    public void A_scenario_without_factors_has_its_base_case_alone()
    {
        var certain = new LifeModel(FiveLegs.Scenario with
        { Inputs = [.. FiveLegs.Scenario.Inputs.Select(i => i with { Value = new Value.Certain(i.Value.Nominal) })] });
        Assert.Single(PointChoice.Choose(certain, 5, 1));
        Assert.Equal(5, ConfirmationAnalysis.SimulationsOf(certain, new ConfirmationQuestion { Points = 4 }));
    }

    [Fact]
    public void Simulations_are_points_times_legs_those_of_the_trip_too()
    {
        Assert.Equal(5 * 5, ConfirmationAnalysis.SimulationsOf(Model, new ConfirmationQuestion { Points = 4 }));
        Assert.Equal(5, ConfirmationAnalysis.SimulationsOf(Model, new ConfirmationQuestion { Points = 0 }));
        var trip = new LifeModel(TripCases.Like(FiveLegs.Scenario, 0, (1, 50), (2, 70)));
        Assert.Equal(3 * (5 + 2), ConfirmationAnalysis.SimulationsOf(trip, new ConfirmationQuestion { Points = 2 }));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    [InlineData(1)]
    public void A_leg_mixes_its_surfaces_by_share(double share)
    {
        static SurfaceResult Of(double damage, double off) => new(64, [damage, 2 * damage], 0, 0, 0, 0, off);
        var leg = new SimulatedLeg([Of(1e-6, 0.1), Of(3e-6, 0.2)], [Of(5e-6, 0.5), Of(7e-6, 0.9)], share, 20);
        Assert.Equal(2, leg.Rides);
        Assert.Equal(((1 - share) * 0.1) + (share * 0.5), leg.Mean(0, s => s.OffGroundShare), 1e-15);

        // Per km: 1000 m at 20 m/s are 50 s.
        Assert.Equal(50 * (((1 - share) * 3e-6) + (share * 7e-6)), leg.PerKm(1, 0), 1e-18);
        Assert.Equal(50 * (((1 - share) * 2e-6) + (share * 10e-6)), leg.PerKm(0, 1), 1e-18);
    }

    // Records of whole periods of 64 s: the least that covers the distance.
    [Theory]
    [InlineData(1.999)]
    [InlineData(2)]
    [InlineData(2.001)]
    public void A_record_lasts_as_many_whole_periods_as_its_distance_needs(double periods)
    {
        Scenario leg = FiveLegs.Scenario with
        {
            Legs = [FiveLegs.Scenario.Legs[0] with { Share = 1 }],
            Inputs = [.. FiveLegs.Scenario.Inputs.Where(i => i.Leg is null or 0)]
        };
        var question = new ConfirmationQuestion { Points = 0, KmPerRecord = periods * 64 * 80 / 3600.0 * (1 - 1e-12), LiftOff = false };
        ConfirmationResult result = ConfirmationAnalysis.Run(new LifeModel(leg), question, new RunOptions());
        Assert.Equal(16 * 64 * Math.Ceiling(periods), result.SimulatedSeconds);
        Assert.Equal((1, 16), (result.Evaluations, result.Records));
        Assert.Equal((0.02, result.Points[0].Ratio.Estimate), (result.RatioCov, result.RatioMedian),
            (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-12);
    }

    private static double[] Lives(ChosenPoint[] points)
    {
        Workspace workspace = Model.CreateWorkspace(points.Length);
        double[][] values = Model.CreateColumns(points.Length);
        for (int c = 0; c < values.Length; c++)
        {
            for (int row = 0; row < points.Length; row++)
            {
                values[c][row] = points[row].Values[c];
            }
        }

        Model.Evaluate(values, points.Length, workspace);
        return workspace.LifeKm[..points.Length];
    }
}
