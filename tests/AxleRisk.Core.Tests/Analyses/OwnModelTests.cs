using System.Collections.Immutable;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Analyses.Confirmation;
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
using AxleRisk.LibraryExample;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>
/// Every analysis on a damage model that is not the axle's: a beam whose life is lognormal,
/// ln life = ln(C / 40) - 4 ln(1000 F a / W) + ln Miner + ln 10 scatter, all normal and independent.
/// </summary>
public sealed class OwnModelTests
{
    private const double Km = 100_000;

    private static readonly Scenario Beam = BeamStudy.Beam(new BeamModel());

    private static readonly double Mu = MuOf(8);

    private static readonly double Sigma = Math.Sqrt(RestVariance + (16 * 0.1 * 0.1));

    private static double RestVariance => (0.3 * 0.3) + (0.2 * Math.Log(10) * 0.2 * Math.Log(10)) + (16 * 0.05 * 0.05);

    [Fact]
    public void The_base_case_has_the_formula_s_life_and_pulls()
    {
        BaseCaseResult result = BaseCaseAnalysis.Run(new LifeModel(Beam));
        Assert.Equal(Math.Exp(Mu), result.LifeKm, 1e-9 * result.LifeKm);
        Assert.Null(result.Axle);
        Assert.Equal([0.375, 0.625], result.DamageShares.Select(s => Math.Round(s, 12)));
        OneAtATime load = result.Factors.Single(f => f.Factor.Name == "beam.load_kn");
        Assert.Equal(Math.Pow(1.1, -4), load.LifeAtPlusTenPercent, 1e-12);
    }

    [Theory]
    [InlineData(Km, 20_000)]
    [InlineData(400_000, 20_000)]
    public void The_failure_probability_is_the_lognormal_s(double km, long evaluations)
    {
        (RiskResult result, _) = RiskAnalysis.Run(
            new LifeModel(Beam with { RequiredKm = km }), new StudySettings(evaluations, 1, "sobol"), new RiskQuestion(), new RunOptions());
        Assert.Equal(RiskMethod.Conditional, result.Method);
        Assert.InRange(Failed(km), result.AtRequired.Probability.Low, result.AtRequired.Probability.High);
        Assert.Equal(Failed(km), result.AtRequired.Probability.Estimate, 0.01 * Failed(km));
    }

    // Exact to hundreds of digits before the decimal point: the limit state is linear in normal scores.
    [Fact]
    public void A_rare_failure_is_found_too()
    {
        RareEventResult result = RareEventAnalysis.Run(new LifeModel(Beam), 10_000, new RareEventSettings(1), new RunOptions());
        Assert.Equal(Failed(10_000), result.Probability.Estimate, 4 * result.Cov * Failed(10_000));
        Assert.InRange(Failed(10_000), 1e-10, 1e-6);
    }

    // Of a sum of independent parts each factor's share of the variance of ln life is its part.
    [Fact]
    public void The_shares_of_the_variance_of_life_are_the_parts_of_the_sum()
    {
        RankResult result = RankAnalysis.Run(new LifeModel(Beam), new StudySettings(200_000, 1, "sobol"), new RunOptions());
        foreach ((string name, double part) in new[]
        {
            ("beam.load_kn", 16 * 0.1 * 0.1), ("beam.modulus_cm3", 16 * 0.05 * 0.05), ("fatigue.miner_sum", 0.3 * 0.3),
        })
        {
            RankedFactor factor = result.Factors.Single(f => f.Factor.Name == name);
            Assert.Equal(part / (Sigma * Sigma), factor.Life.First.Estimate, 0.01);
            Assert.Equal(part / (Sigma * Sigma), factor.LifeShare.Estimate, 0.02);
        }
    }

    [Fact]
    public void Comparison_remedies_and_decision_see_the_stronger_beam()
    {
        Scenario scenario = WithRemedy();
        var settings = new StudySettings(20_000, 1, "sobol");
        ComparisonResult compared = Comparison.Run(
            [new LifeModel(scenario), new LifeModel(Remedy.Apply(scenario, scenario.Remedies[0]))], Km, settings, new RunOptions());
        double lighter = Phi((Math.Log(Km) - MuOf(7.2)) / Sigma);
        Near(lighter, compared.Cases[1].Probability.Estimate, 0.01);
        Assert.Equal(lighter - Failed(Km), compared.Cases[1].Change!.Difference.Estimate, 1e-4);
        RemediesResult remedies = RemediesAnalysis.Run(new LifeModel(scenario), settings, new RunOptions());
        Near(lighter, remedies.Comparison.Cases[1].Probability.Estimate, 0.01);
        DecideResult decided = DecideAnalysis.Run(new LifeModel(scenario), new StudySettings(65_536, 1, "sobol"), new RunOptions());
        Assert.Equal(12 + (10_000 * lighter), decided.Options.Single(o => o.Name == "less load").NetCost.Estimate, 0.2);
        Assert.Equal(10_000 * Failed(Km), decided.Options[0].NetCost.Estimate, 0.4);
    }

    [Fact]
    public void A_sweep_has_the_formula_s_lives()
    {
        SweepResult result = SweepAnalysis.Run(
            new LifeModel(Beam), [new SweptInput("beam.load_kn", "6", "10", 2)], new StudySettings(20_000, 1, "sobol"), new RunOptions());
        double[] loads = [6, 8, 10];
        Assert.All(result.Points.Zip(loads), x => Near(Math.Pow(x.Second / 8, -4), x.First.RelativeLife, 1e-12));
        Near(Phi((Math.Log(Km) - MuOf(10)) / Math.Sqrt(RestVariance)), result.Points[2].Case.Probability.Estimate, 0.01);
    }

    // P(F in its upper tenth, failed by d) by the midpoint rule over the score of the load, over P(failed by d).
    [Fact]
    public void Causes_have_the_posterior_of_quadrature()
    {
        CausesResult result = CausesAnalysis.Run(
            new LifeModel(Beam), new Evidence { Life = new LifeEvidence.FailedBetween(0, Km) }, new StudySettings(60_000, 1, "sobol"),
            new RunOptions());
        double joint = Midpoint(z => Phi((Math.Log(Km) - Mu + (4 * 0.1 * z)) / Math.Sqrt(RestVariance)), StandardNormal.Quantile(0.9), 9);
        Cause load = result.Causes.Single(c => c.Name == "beam.load_kn");
        Assert.True(load.IsHighAdverse);
        StateShift upper = load.States[^1].Prior < 0.11 ? load.States[^1] : load.States[0];
        Assert.Equal(0.1, upper.Prior, 1e-9);
        Assert.Equal(joint / Failed(Km), upper.Posterior.Estimate, 0.02);
    }

    // Of the worst tenth of the load's probability: P(failed | F in it), by the same rule.
    [Fact]
    public void A_combination_knows_its_probability()
    {
        CombineResult result = CombineAnalysis.Run(
            new LifeModel(Beam), new StudySettings(100_000, 1, "sobol"), new CombineLimits(), new RunOptions());
        Near(Failed(Km), result.Probability.Estimate, 0.03);
        double joint = Midpoint(z => Phi((Math.Log(Km) - Mu + (4 * 0.1 * z)) / Math.Sqrt(RestVariance)), StandardNormal.Quantile(0.8), 9);
        Near(joint / 0.2, result.Ranges.Single(r => r.Column == "beam.load_kn").Probability.Estimate, 0.05);
    }

    // A year's use of 20,000 km, sold at once, five years or 100,000 km: nearly every claim is a failure by 100,000 km.
    [Fact]
    public void A_fleet_has_the_lognormal_s_claims()
    {
        Scenario scenario = Beam with
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
    public void A_measurement_of_what_decides_is_worth_something()
    {
        Scenario scenario = WithRemedy();
        scenario = scenario with
        {
            Inputs = [.. scenario.Inputs.Select(i => i.Name == "beam.load_kn"
                ? i with { Value = new Value.Uncertain(new Lognormal(8, 0.1), Knowledge.Unknown) } : i)],
        };
        MeasureResult result = MeasureAnalysis.Run(new LifeModel(scenario), new StudySettings(4096, 1, "sobol"), new RunOptions());

        // E[max of two options] less the better one, by the midpoint rule over the score of the load; 1 vehicle.
        double Stays(double z) => 10_000 * Phi((Math.Log(Km) - MuOf(8 * Math.Exp(0.1 * z))) / Math.Sqrt(RestVariance));
        double Changes(double z) => 12 + (10_000 * Phi((Math.Log(Km) - MuOf(7.2 * Math.Exp(0.1 * z))) / Math.Sqrt(RestVariance)));
        double best = Midpoint(z => Math.Min(Stays(z), Changes(z)), -9, 9);
        double worth = Math.Min(Midpoint(Stays, -9, 9), Midpoint(Changes, -9, 9)) - best;
        Assert.InRange(worth, 0.1, 100);
        Assert.Equal(worth, result.Factors.Single().Perfect.Estimate, 0.05 * worth);
    }

    // Known failures: a normal sample of known sd with a normal prior of ln load.
    [Fact]
    public void Learning_gives_the_conjugate_normal()
    {
        double[] lives = [300_000, 500_000, 450_000];
        Scenario scenario = Beam with
        {
            Inputs = [.. Beam.Inputs.Select(i => i.Name == "beam.load_kn"
                ? i with { Value = new Value.Uncertain(new Lognormal(8, 0.1), Knowledge.Unknown) } : i)],
            Field = new FieldData("returns.csv", [.. lives.Select((km, i) => new FieldRecord(km, km, 1, "", [], i + 2))]),
        };
        LearnResult result = LearnAnalysis.Run(
            new LifeModel(scenario), new LearnQuestion([Km]), new StudySettings(1 << 19, 1, "sobol"), new RunOptions());
        double precision = (1 / 0.01) + (lives.Length * 16 / RestVariance);
        double mean = lives.Sum(km => (Mu - Math.Log(km)) / 4 * 16 / RestVariance) / precision;
        LearnedFactor load = result.Factors.Single();
        Assert.Equal(8 * Math.Exp(mean), load.Posterior!.Median, 0.01);
        Assert.Equal(8 * Math.Exp(mean + (1.644854 / Math.Sqrt(precision))), load.Posterior.High, 0.02);
    }

    // The trip's damage on top of what was driven before, of those that came so far: all in the same lognormal.
    [Fact]
    public void A_trip_has_the_lognormal_s_risk()
    {
        Scenario scenario = Beam with
        {
            Trip = new Trip
            {
                Legs = [new TripLeg("up", null, 1)],
                Inputs =
                [
                    new Input("trip.already_driven_km", TripQuantities.AlreadyDriven, null, new Value.Certain(50_000), false),
                    new Input("trip.up.km", TripQuantities.Distance, 2, new Value.Certain(20_000), false),
                ],
            },
        };
        TripResult result = TripAnalysis.Run(scenario, new StudySettings(32_768, 1, "sobol"), new TripQuestion(), new RunOptions());

        // 20,000 km of 100 cycles are 50,000 km of the usual use's 40.
        Near((Failed(100_000) - Failed(50_000)) / (1 - Failed(50_000)), result.Probability.Estimate, 0.02);
    }

    [Fact]
    public void What_looks_into_the_axle_s_own_model_says_so()
    {
        StudyException told = Assert.Throws<StudyException>(
            () => ConfirmationAnalysis.Run(new LifeModel(Beam), new ConfirmationQuestion(), new RunOptions()));
        Assert.Contains("the axle's own damage model", told.Message);
    }

    // A millisecond each: a minute of them at most, by importance sampling; the fast model spends a hundred thousand.
    [Fact]
    public void A_slow_model_is_asked_little()
    {
        var slow = new CountedBeam();
        var model = new LifeModel(BeamStudy.Beam(slow) with { RequiredKm = 30_000 });
        (RiskResult result, _) = RiskAnalysis.Run(
            model, RiskAnalysis.UsualSettings(model), RiskAnalysis.UsualQuestion(model) with { DistancesKm = [30_000] }, new RunOptions());
        Assert.Equal(RiskMethod.Importance, result.AtRequired.Method);
        Assert.InRange(Failed(30_000), result.AtRequired.Probability.Low * 0.9, result.AtRequired.Probability.High * 1.1);
        Assert.InRange(slow.Evaluations, 1_000, 15_000);
        Assert.Equal(100_000, RiskAnalysis.UsualSettings(new LifeModel(Beam)).Evaluations);
    }

    [Fact]
    public void A_further_mode_and_ageing_of_a_model_are_counted_in()
    {
        var ageing = new AgeingBeam();
        var model = new LifeModel(BeamStudy.Beam(ageing) with
        {
            Inputs = [.. Beam.Inputs, new Input("beam.wear_limit", AgeingBeam.Limit, null, AgeingBeam.Limit.Default!, false)],
        });
        (RiskResult result, _) = RiskAnalysis.Run(model, new StudySettings(20_000, 1, "sobol"), new RiskQuestion(), new RunOptions());

        // Damage rate e^(km/L): used by d is rate L (e^(d/L) - 1); the second mode is worn out by 1e-6 a km of an exponential limit.
        double used = AgeingBeam.LengthKm * (Math.Exp(Km / AgeingBeam.LengthKm) - 1);
        double exact = 1 - ((1 - Failed(used)) * Math.Exp(-1e-6 * Km));
        Assert.Equal(["fatigue", "wear"], model.Modes.Modes.Select(m => m.Key));
        Near(exact, result.AtRequired.Probability.Estimate, 0.01);
    }

    private static Scenario WithRemedy() => Beam with
    {
        Remedies = [new Remedy("less load", 12, [new Change.Times("beam.load_kn", 0.9)])],
        Decision = new Decision { FailureCost = new Value.Certain(10_000) },
    };

    private static double MuOf(double load) => Math.Log(5e14 / 40) - (4 * Math.Log(1000 * load * 0.5 / 60));

    private static double Failed(double km) => Phi((Math.Log(km) - Mu) / Sigma);

    private static double Phi(double z) => StandardNormal.Cumulative(z);

    private static double Midpoint(Func<double, double> of, double from, double to)
    {
        const int Steps = 20_000;
        double step = (to - from) / Steps;
        return Enumerable.Range(0, Steps).Select(i => from + ((i + 0.5) * step)).Sum(z => of(z) * StandardNormal.Density(z) * step);
    }

    private static void Near(double expected, double actual, double relative) => Assert.Equal(expected, actual, relative * expected);

    private sealed class CountedBeam : DamageModel
    {
        private readonly BeamModel beam = new();
        private long evaluations;

        public long Evaluations => evaluations;

        public override double MicrosecondsPerEvaluation => 1000;

        public override DamageWorker CreateWorker(int capacity) => new Worker(this, beam.CreateWorker(capacity));

        private sealed class Worker(CountedBeam parent, DamageWorker beam) : DamageWorker
        {
            public override void Evaluate(InputColumns inputs, double[][] damagePerKm, double[][] ratesPerKm)
            {
                Interlocked.Add(ref parent.evaluations, inputs.Count);
                beam.Evaluate(inputs, damagePerKm, ratesPerKm);
            }
        }
    }

    private sealed class AgeingBeam : DamageModel
    {
        public const double LengthKm = 200_000;

        private readonly BeamModel beam = new();

        public override bool Ages => true;

        public static Quantity Limit { get; } = new(
            "beam", "wear_limit", "limit of wear", "", Domain.Positive, "how much it can wear",
            new Value.Uncertain(new Weibull(1, 1), Knowledge.Varies), "a test");

        public override ImmutableArray<ModelMode> FurtherModes { get; } = [new("wear", "worn out", Limit)];

        public override DamageWorker CreateWorker(int capacity) => new Worker(beam.CreateWorker(capacity));

        private sealed class Worker(DamageWorker beam) : DamageWorker
        {
            public override void Evaluate(InputColumns inputs, double[][] damagePerKm, double[][] ratesPerKm)
            {
                beam.Evaluate(inputs, damagePerKm, ratesPerKm);
                for (int row = 0; row < inputs.Count; row++)
                {
                    double age = Math.Exp((inputs.AgeKm.IsEmpty ? 0 : inputs.AgeKm[row]) / LengthKm);
                    foreach (double[] leg in damagePerKm)
                    {
                        leg[row] *= age;
                    }

                    ratesPerKm[0][row] = 1e-6;
                }
            }
        }
    }
}
