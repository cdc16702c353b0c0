using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Trips;

/// <summary>Trips too rare to sample, and remedies that put in another housing, against closed forms of a log-linear scenario.</summary>
public sealed class RareTripTests
{
    private static readonly StudySettings Few = new(1_024, 1, "sobol");

    [Theory]
    [InlineData(0, 300, 500)]
    [InlineData(200, 300, 500)]
    [InlineData(0.001, 0.001, 0.002)]
    public void A_rare_trip_has_the_closed_form(double before, double out1, double back)
    {
        // Source: F(end) - F(start) by definition; F is LogLinear's, and the legs have the usual road's damage per km.
        TripResult result = TripRiskTests.Run(Trip(before, out1, back), Few);
        double F(double km) => LogLinear.Probability(km);
        double[] exact = [F(before + out1) - F(before), F(before + out1 + back) - F(before + out1)];
        Assert.Equal(["out", "back"], result.Rare.Select(r => r.Leg));
        for (int leg = 0; leg < 2; leg++)
        {
            VeryRareTests.AssertHolds(result.Legs[leg].Conditional, exact[leg]);
            Assert.InRange(result.Legs[leg].Share.Estimate, result.Legs[leg].Share.Low, result.Legs[leg].Share.High);
        }

        VeryRareTests.AssertHolds(result.Probability, exact.Sum());
        Assert.Equal(result.Probability, result.Legs[1].Cumulative);
        Assert.Equal(1, result.Legs.Sum(l => l.Share.Estimate), 1e-12);
        Assert.InRange(result.Rare[1].Answer.States[0].DesignPoints[0].Beta, 4, 20);
        Assert.Equal(result.Run.Evaluations + result.Rare.Sum(r => r.Answer.Run.Evaluations), result.AllEvaluations);
    }

    [Fact]
    public void So_it_has_where_failures_are_counted()
    {
        // P = E[Phi(ln(d r / S) / 0.8)] over a Miner sum S uniform on 0.7 to 1.3, by the midpoint rule.
        Scenario scenario = Trip(0, 300, 500);
        scenario = scenario with
        {
            Inputs = [.. scenario.Inputs.Select(i => i.Quantity == Quantities.MinerSum ? i with
                { Value = new Value.Uncertain(new Uniform(0.7, 1.3), Knowledge.Varies) }
                : i.Quantity == Quantities.LifeScatter ? i with { Value = new Value.Certain(0) } : i)],
        };
        double exact = Enumerable.Range(0, 2_000)
            .Average(i => StandardNormal.Cumulative(Math.Log(800 / LogLinear.MedianKm / (0.7 + (0.6 * (i + 0.5) / 2_000)))
            / LogLinear.RatioSigma));
        TripResult result = TripRiskTests.Run(scenario, Few);
        Assert.False(result.IsConditional);
        VeryRareTests.AssertHolds(result.Probability, exact);
    }

    [Fact]
    public void A_design_point_of_a_leg_breaks_at_its_end()
    {
        TripResult result = TripRiskTests.Run(Trip(200, 300, 500), Few);
        double Of(string name) => result.Rare[1].Answer.States[0].DesignPoints[0].Coordinates.Single(c => c.Name == name).Value;
        double km = LogLinear.MedianKm * Of("fatigue.miner_sum") * Math.Pow(10, Of("fatigue.log10_life_scatter"))
            / Of("fatigue.damage_ratio");
        Assert.InRange(km, 980, 1_020); // nearly all fail between 500 and 1,000 km, the most at the end
    }

    [Fact]
    public void A_leg_that_few_vehicles_carry_is_answered_alone()
    {
        TripResult result = TripRiskTests.Run(Trip(20_000, 1, 100_000), Few);
        Assert.Equal("back", result.Legs[1].Name);
        VeryRareTests.AssertHolds(result.Legs[1].Conditional, LogLinear.Probability(120_001) - LogLinear.Probability(20_001));
        Assert.True(result.Legs[0].Share.Estimate < 1e-3);

        // Of the first leg, rarer than sampling can tell, either way the interval holds the truth.
        Interval first = result.Legs[0].Conditional;
        double exact = LogLinear.Probability(20_001) - LogLinear.Probability(20_000);
        Assert.InRange(exact, first.Low / 1.3, first.High * 1.3);
    }

    [Fact]
    public void Remedies_of_a_rare_trip_state_bounds()
    {
        Scenario scenario = WithRemedy(Trip(200, 300, 500), 0);
        TripRemedy remedy = Assert.Single(TripRiskTests.Run(scenario, Few).Remedies);
        Assert.True(double.IsNaN(remedy.Probability.Estimate));
        Assert.InRange(LogLinear.Probability(800), 0, remedy.Probability.High);
        Assert.False(remedy.IsDistinct);
    }

    // Of no estimate the bound counts: what may be as bad as its bound stands behind what is known to be better.
    [Fact]
    public void Remedies_stand_in_the_order_of_their_estimates_or_bounds()
    {
        TripResult result = TripRiskTests.Run(
            Trip(200_000, 300, 500) with { Remedies = [Driven("new", 0), Driven("old", 400_000), Driven("young", 100_000)] }, Few);
        double[] order =
            [.. result.Remedies.Select(r => double.IsNaN(r.Probability.Estimate) ? r.Probability.High : r.Probability.Estimate)];
        Assert.Equal(order.Order(), order);
        Assert.Contains(result.Remedies, r => double.IsNaN(r.Probability.Estimate));
        Assert.True(double.IsNaN(result.Remedies[^1].Probability.Estimate));

        static Remedy Driven(string name, double km) =>
            new(name, null, [new Change.ToValue("trip.already_driven_km", new Value.Certain(km))]);
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(0, true)]
    [InlineData(200_000, false)]
    [InlineData(200_000, true)]
    public void Another_housing_is_compared_on_the_vehicles_that_set_out(double driven, bool counted)
    {
        // 500,000 km were driven, the trip has 100,000. With F the scale's distribution and r the damage ratio of the vehicle,
        // P = E[(1 - F(r d0)) (F(r (d + dt)) - F(r d)) / (1 - F(r d))] / E[1 - F(r d0)]: the midpoint rule over r's normal score.
        const double Planned = 500_000, Km = 100_000;
        double F(double km, double r) => StandardNormal.Cumulative(Math.Log(km * r / LogLinear.MedianKm) / LogLinear.ScaleSigma);
        double reached = 0, fails = 0, plan = 0;
        for (int i = 0; i < 2_000; i++)
        {
            double r = Math.Exp(LogLinear.RatioSigma * StandardNormal.Quantile((i + 0.5) / 2_000));
            double w = 1 - F(Planned, r);
            reached += w;
            plan += F(Planned + Km, r) - F(Planned, r);
            fails += w * (F(driven + Km, r) - F(driven, r)) / (1 - F(driven, r));
        }

        Scenario scenario = WithRemedy(Trip(Planned, Km / 2, Km / 2), driven);
        TripResult result = TripRiskTests.Run(scenario, new StudySettings(4_096, 1, "sobol"), new TripQuestion { IsCounted = counted });
        TripRemedy remedy = Assert.Single(result.Remedies);
        double tolerance = 1.05 * (remedy.Probability.High - remedy.Probability.Low); // four standard errors
        Assert.Equal(fails / reached, remedy.Probability.Estimate, tolerance);
        Assert.Equal(fails / plan, remedy.Ratio.Estimate, 1.05 * (remedy.Ratio.High - remedy.Ratio.Low));

        // Over all vehicles, those among them that never set out, it would be more than that allows.
        double overAll = Enumerable.Range(0, 2_000)
            .Average(i => Math.Exp(LogLinear.RatioSigma * StandardNormal.Quantile((i + 0.5) / 2_000)) is var r
            ? (F(driven + Km, r) - F(driven, r)) / (1 - F(driven, r)) : 0);
        Assert.True(overAll > (fails / reached) + (2 * tolerance));
    }

    private static Scenario WithRemedy(Scenario scenario, double drivenKm) => scenario with
    {
        Remedies = [new Remedy("another housing", null, [new Change.ToValue("trip.already_driven_km", new Value.Certain(drivenKm))])],
    };

    private static Scenario Trip(double before, double first, double second)
    {
        Scenario trip = TripCases.Like(LogLinear.Scenario, before, (0, first), (0, second));
        return trip with
        {
            Trip = trip.Trip! with
            { Legs = [trip.Trip.Legs[0] with { Name = "out" }, trip.Trip.Legs[1] with { Name = "back" }] }
        };
    }
}
