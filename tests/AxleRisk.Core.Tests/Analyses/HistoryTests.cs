using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Analyses.Decisions;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Analyses.Measurements;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Analyses.Sweeps;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using AxleRisk.LibraryExample;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>
/// Every analysis of a vehicle with a history, on a beam whose damage goes with the fourth power of the load: with <c>s</c> times the
/// load from <c>t</c> on it has used up at <c>d</c> what it would have without the change at <c>t + s^4 (d - t)</c>, whose life is
/// lognormal.
/// </summary>
public sealed class HistoryTests
{
    private const double Km = 100_000, Bend = 60_000, Heavier = 1.1;

    private static readonly double Faster = Math.Pow(Heavier, 4);

    private static readonly Scenario Beam = BeamStudy.Beam(new BeamModel());

    private static readonly Scenario Changed = Histories.From(Beam, Bend, new Change.Times("beam.load_kn", Heavier));

    private static readonly double Mu = Math.Log(5e14 / 40) - (4 * Math.Log(1000 * 8 * 0.5 / 60));

    private static readonly double RestVariance = (0.3 * 0.3) + (0.2 * Math.Log(10) * 0.2 * Math.Log(10)) + (16 * 0.05 * 0.05);

    private static readonly double Sigma = Math.Sqrt(RestVariance + (16 * 0.1 * 0.1));

    [Fact]
    public void The_base_case_has_the_life_of_both_stretches()
    {
        BaseCaseResult result = BaseCaseAnalysis.Run(new LifeModel(Changed));
        Near(Bend + ((Math.Exp(Mu) - Bend) / Faster), result.LifeKm, 1e-9);
        Near(Math.Exp(-Mu) * Without(Km) / Km, result.DamagePerKm, 1e-9);
    }

    // On both sides of the bend, near it and far; between distances of the table a cubic that the bend does not cross.
    [Theory]
    [InlineData(30_000)]
    [InlineData(57_000)]
    [InlineData(Bend)]
    [InlineData(63_000)]
    [InlineData(Km)]
    [InlineData(700_000)]
    public void The_failure_probability_is_the_lognormal_s_at_the_distance_without_the_change(double km)
    {
        (RiskResult result, _) = RiskAnalysis.Run(
            new LifeModel(Changed with { RequiredKm = Km }), new StudySettings(65_536, 1, "sobol"),
            new RiskQuestion { DistancesKm = [km] }, new RunOptions());
        DistanceRisk told = result.Distances.Single(d => d.DistanceKm == km);
        Near(Failed(km), told.Probability.Estimate, km < Bend / 1.5 ? 0.05 : 0.01); // 8e-6 by 30,000 km
        Assert.InRange(Failed(km), told.Probability.Low * 0.999, told.Probability.High * 1.001);
    }

    [Fact]
    public void Lives_are_those_of_both_stretches()
    {
        (RiskResult result, _) = RiskAnalysis.Run(
            new LifeModel(Changed), new StudySettings(65_536, 1, "sobol"), new RiskQuestion(), new RunOptions());
        foreach (var life in result.Lives)
        {
            double without = Math.Exp(Mu + (Sigma * StandardNormal.Quantile(life.Percent / 100)));
            Near(without < Bend ? without : Bend + ((without - Bend) / Faster), life.LifeKm.Estimate, 0.01);
        }
    }

    [Fact]
    public void A_rare_failure_is_found()
    {
        RareEventResult result = RareEventAnalysis.Run(
            new LifeModel(Histories.From(Beam, 5_000, new Change.Times("beam.load_kn", 1.5))), 10_000, new RareEventSettings(1), new RunOptions());
        double exact = Phi((Math.Log(5_000 + (Math.Pow(1.5, 4) * 5_000)) - Mu) / Sigma);
        Assert.InRange(exact, 1e-8, 1e-4);
        Assert.Equal(exact, result.Probability.Estimate, 4 * result.Cov * exact);
    }

    // A stretch's own load is another draw: P = E[Phi] over both scores, by the midpoint rule.
    [Fact]
    public void What_a_stretch_states_anew_is_drawn_anew()
    {
        var change = new Change.ToValue("beam.load_kn", new Value.Uncertain(new Lognormal(9, 0.2), Knowledge.Varies));
        Scenario scenario = Histories.Of(Beam, ([], Bend), ([change], 80_000), ([change], double.PositiveInfinity));
        var model = new LifeModel(scenario);
        Assert.Equal([.. new LifeModel(Beam).Factors.ColumnNames, "history.2.beam.load_kn"], model.Factors.ColumnNames);
        Assert.Equal("load in stretch 2", scenario.LabelOf("history.2.beam.load_kn"));
        Assert.Equal("load in stretch 2", model.Factors.Find("history.2.beam.load_kn")!.Label);
        (RiskResult result, _) = RiskAnalysis.Run(model, new StudySettings(65_536, 1, "sobol"), new RiskQuestion(), new RunOptions());
        double Used(double a, double b) => (Bend * Math.Exp(0.4 * a)) + ((Km - Bend) * Math.Pow(9.0 / 8, 4) * Math.Exp(0.8 * b));
        double exact = Midpoint(
            a => Midpoint(b => Phi((Math.Log(Used(a, b)) - Mu) / Math.Sqrt(RestVariance)), -9, 9, 400), -9, 9, 400);
        Near(exact, result.AtRequired.Probability.Estimate, 0.01);
        RankResult ranked = RankAnalysis.Run(model, new StudySettings(20_000, 1, "sobol"), new RunOptions());
        Assert.Contains(ranked.Factors, f => f.Factor.Name == "history.2.beam.load_kn" && f.Life.First.Estimate > 0.02);
    }

    // 0.75 and 0.25 of 20 and 100 cycles are 40 a km; half and half are 60.
    [Fact]
    public void Another_road_mix_counts_from_its_stretch()
    {
        Scenario scenario = Histories.From(Beam, Bend, new Change.ToShare("flat", 0.5), new Change.ToShare("hilly", 0.5));
        BaseCaseResult result = BaseCaseAnalysis.Run(new LifeModel(scenario));
        Near(Bend + ((Math.Exp(Mu) - Bend) / 1.5), result.LifeKm, 1e-9);
        double hilly = ((Bend * 25) + ((Km - Bend) * 50)) / ((Bend * 40) + ((Km - Bend) * 60));
        Assert.Equal(hilly, result.DamageShares[1], 1e-12);
    }

    // The share of failures by what varies: E of a conditional probability of the load in closed form; both ways of stating the same.
    [Fact]
    public void The_ranking_is_that_of_the_distance_without_the_change()
    {
        RankResult result = RankAnalysis.Run(new LifeModel(Changed), new StudySettings(131_072, 1, "sobol"), new RunOptions());
        RankResult same = RankAnalysis.Run(
            new LifeModel(Beam with { RequiredKm = Without(Km) }), new StudySettings(131_072, 1, "sobol"), new RunOptions());
        foreach (RankedFactor factor in same.Factors)
        {
            RankedFactor other = result.Factors.Single(f => f.Factor.Name == factor.Factor.Name);
            Assert.Equal(factor.Failure.First.Estimate, other.Failure.First.Estimate, 0.02);
            Assert.Equal(factor.Failure.Total.Estimate, other.Failure.Total.Estimate, 0.03);
        }
    }

    [Fact]
    public void Comparison_remedies_decision_and_sweep_see_both_stretches()
    {
        Scenario scenario = WithRemedy(Changed);
        var settings = new StudySettings(65_536, 1, "sobol");
        ComparisonResult compared = Comparison.Run([new LifeModel(Beam), new LifeModel(Changed)], Km, settings, new RunOptions());
        Near(Phi((Math.Log(Km) - Mu) / Sigma), compared.Cases[0].Probability.Estimate, 0.01);
        Near(Failed(Km), compared.Cases[1].Probability.Estimate, 0.01);

        // A remedy holds from the first km: the change of the stretch is on top of it.
        double lighter = Failed(Km, MuOf(7.2));
        RemediesResult remedies = RemediesAnalysis.Run(new LifeModel(scenario), settings, new RunOptions());
        Near(lighter, remedies.Comparison.Cases[1].Probability.Estimate, 0.01);
        DecideResult decided = DecideAnalysis.Run(new LifeModel(scenario), settings, new RunOptions());
        Near(12 + (10_000 * lighter), decided.Options.Single(o => o.Name == "less load").NetCost.Estimate, 0.02);
        SweepResult swept = SweepAnalysis.Run(
            new LifeModel(Changed), [new SweptInput("beam.load_kn", "6", "10", 2)], new StudySettings(20_000, 1, "sobol"), new RunOptions());
        double[] loads = [6, 8, 10];
        Assert.All(swept.Points.Zip(loads), x => Near(LifeOf(MuOf(x.Second)) / LifeOf(Mu), x.First.RelativeLife, 1e-9));
    }

    // P(F in its upper tenth, failed by d) by the midpoint rule over the score of the load, over P(failed by d).
    [Theory]
    [InlineData(0, 90_000)]
    [InlineData(50_000, 90_000)]
    [InlineData(90_000, 90_000)]
    public void Causes_have_the_posterior_of_quadrature(double from, double to)
    {
        LifeEvidence evidence = from == to ? new LifeEvidence.FailedAt(from) : new LifeEvidence.FailedBetween(from, to);
        (double low, double high) = from == to ? (from * (1 - 1e-4), to * (1 + 1e-4)) : (from, to);
        CausesResult result = CausesAnalysis.Run(
            new LifeModel(Changed), new Evidence { Life = evidence }, new StudySettings(60_000, 1, "sobol"), new RunOptions());
        double By(double km, double z) => km == 0 ? 0 : Phi((Math.Log(Without(km)) - Mu + (4 * 0.1 * z)) / Math.Sqrt(RestVariance));
        double Joint(double start) => Midpoint(z => By(high, z) - By(low, z), start, 9, 20_000);
        Cause load = result.Causes.Single(c => c.Name == "beam.load_kn");
        StateShift upper = load.States[^1].Prior < 0.11 ? load.States[^1] : load.States[0];
        Assert.Equal(Joint(StandardNormal.Quantile(0.9)) / Joint(-9), upper.Posterior.Estimate, 0.02);
    }

    [Fact]
    public void A_combination_knows_its_probability()
    {
        CombineResult result = CombineAnalysis.Run(
            new LifeModel(Changed), new StudySettings(100_000, 1, "sobol"), new CombineLimits(), new RunOptions());
        Near(Failed(Km), result.Probability.Estimate, 0.03);
        double joint = Midpoint(
            z => Phi((Math.Log(Without(Km)) - Mu + (4 * 0.1 * z)) / Math.Sqrt(RestVariance)), StandardNormal.Quantile(0.8), 9, 20_000);
        Near(joint / 0.2, result.Ranges.Single(r => r.Column == "beam.load_kn").Probability.Estimate, 0.05);
    }

    [Fact]
    public void A_fleet_has_the_lognormal_s_claims()
    {
        Scenario scenario = Changed with
        {
            Fleet = new Fleet
            {
                Vehicles = 10_000,
                KmPerYear = new Value.Certain(20_000),
                WarrantyMonths = 60,
                WarrantyKm = Km,
                SaleShares = [1],
            },
        };
        FleetResult result = FleetAnalysis.Run(new LifeModel(scenario), new StudySettings(16_384, 1, "sobol"), new RunOptions());
        Near(Failed(Km), result.ClaimRate.Estimate, 0.01);
    }

    [Fact]
    public void A_measurement_is_worth_what_quadrature_says()
    {
        Scenario scenario = Unknown(WithRemedy(Changed));
        MeasureResult result = MeasureAnalysis.Run(new LifeModel(scenario), new StudySettings(4096, 1, "sobol"), new RunOptions());
        double rest = Math.Sqrt(RestVariance);
        double Stays(double z) => 10_000 * Phi((Math.Log(Without(Km)) - MuOf(8 * Math.Exp(0.1 * z))) / rest);
        double Changes(double z) => 12 + (10_000 * Phi((Math.Log(Without(Km)) - MuOf(7.2 * Math.Exp(0.1 * z))) / rest));
        double best = Midpoint(z => Math.Min(Stays(z), Changes(z)), -9, 9, 20_000);
        double worth = Math.Min(Midpoint(Stays, -9, 9, 20_000), Midpoint(Changes, -9, 9, 20_000)) - best;
        Assert.InRange(worth, 0.1, 1000);
        Assert.Equal(worth, result.Factors.Single().Perfect.Estimate, 0.05 * worth);
    }

    // Known failures on both sides of the bend: a normal sample of known sd, at the distances without the change.
    [Fact]
    public void Learning_from_the_field_gives_the_conjugate_normal()
    {
        double[] lives = [250_000, 500_000, 450_000];
        const double bend = 300_000;
        Scenario scenario = Unknown(Histories.From(Beam, bend, new Change.Times("beam.load_kn", Heavier))) with
        {
            Field = new FieldData("returns.csv", [.. lives.Select((km, i) => new FieldRecord(km, km, 1, "", [], i + 2))]),
        };
        LearnResult result = LearnAnalysis.Run(
            new LifeModel(scenario), new LearnQuestion([Km]), new StudySettings(1 << 19, 1, "sobol"), new RunOptions());
        double precision = (1 / 0.01) + (lives.Length * 16 / RestVariance);
        double mean = lives.Sum(km => (Mu - Math.Log(Without(km, bend))) / 4 * 16 / RestVariance) / precision;
        LearnedFactor load = result.Factors.Single();
        Assert.Equal(8 * Math.Exp(mean), load.Posterior!.Median, 0.01);
        Assert.Equal(8 * Math.Exp(mean + (1.644854 / Math.Sqrt(precision))), load.Posterior.High, 0.02);
    }

    // The trip is driven by the vehicle of the stretch that it begins in; what was driven before is that of all before.
    [Theory]
    [InlineData(50_000, 1)]
    [InlineData(Bend, Heavier)]
    [InlineData(80_000, Heavier)]
    public void A_trip_follows_what_was_driven(double driven, double load)
    {
        TripResult result = TripAnalysis.Run(
            Setting(new Value.Certain(driven)), new StudySettings(32_768, 1, "sobol"), new TripQuestion(), new RunOptions());
        double trip = 20_000 * 100.0 / 40 * Math.Pow(load, 4);
        double before = Phi((Math.Log(Without(driven)) - Mu) / Sigma), after = Phi((Math.Log(Without(driven) + trip) - Mu) / Sigma);
        Near((after - before) / (1 - before), result.Probability.Estimate, 0.02);

        // A new housing is driven by the same vehicle; rare, and a seventh of it where the load were that of the first stretch.
        Near(Phi((Math.Log(trip) - Mu) / Sigma), result.Remedies.Single().Probability.Estimate, 0.1);
    }

    [Fact]
    public void A_trip_begins_in_the_stretch_of_each_vehicle()
    {
        var driven = new Value.Uncertain(new Uniform(40_000, 90_000), Knowledge.Unknown);
        TripResult result = TripAnalysis.Run(Setting(driven), new StudySettings(65_536, 1, "sobol"), new TripQuestion(), new RunOptions());
        double By(double km, bool withTrip) =>
            Phi((Math.Log(Without(km) + (withTrip ? 50_000 * (km < Bend ? 1 : Faster) : 0)) - Mu) / Sigma);
        double[] km = [.. Enumerable.Range(0, 20_000).Select(i => 40_000 + ((i + 0.5) * 2.5))];
        double exact = km.Average(d => By(d, true) - By(d, false)) / km.Average(d => 1 - By(d, false));
        Near(exact, result.Probability.Estimate, 0.02);
    }

    private static Scenario Setting(Value driven) => Changed with
    {
        Trip = new Trip
        {
            Legs = [new TripLeg("up", null, 1)],
            Inputs =
            [
                new Input("trip.already_driven_km", TripQuantities.AlreadyDriven, null, driven, false),
                new Input("trip.up.km", TripQuantities.Distance, 2, new Value.Certain(20_000), false),
            ],
            Remedies = [new Remedy("a new housing", null, [new Change.ToValue("trip.already_driven_km", new Value.Certain(0))])],
        },
    };

    private static Scenario WithRemedy(Scenario scenario) => scenario with
    {
        Remedies = [new Remedy("less load", 12, [new Change.Times("beam.load_kn", 0.9)])],
        Decision = new Decision { FailureCost = new Value.Certain(10_000) },
    };

    private static Scenario Unknown(Scenario scenario) => scenario with
    {
        Inputs = [.. scenario.Inputs.Select(i => i.Name == "beam.load_kn"
            ? i with { Value = new Value.Uncertain(new Lognormal(8, 0.1), Knowledge.Unknown) } : i)],
    };

    private static double MuOf(double load) => Math.Log(5e14 / 40) - (4 * Math.Log(1000 * load * 0.5 / 60));

    private static double Without(double km, double bend = Bend) => Math.Min(km, bend) + (Faster * Math.Max(0, km - bend));

    private static double LifeOf(double mu) => Math.Exp(mu) < Bend ? Math.Exp(mu) : Bend + ((Math.Exp(mu) - Bend) / Faster);

    private static double Failed(double km) => Failed(km, Mu);

    private static double Failed(double km, double mu) => Phi((Math.Log(Without(km)) - mu) / Sigma);

    private static double Phi(double z) => StandardNormal.Cumulative(z);

    private static double Midpoint(Func<double, double> of, double from, double to, int steps)
    {
        double step = (to - from) / steps;
        return Enumerable.Range(0, steps).Select(i => from + ((i + 0.5) * step)).Sum(z => of(z) * StandardNormal.Density(z) * step);
    }

    private static void Near(double expected, double actual, double relative) => Assert.Equal(expected, actual, relative * expected);
}
