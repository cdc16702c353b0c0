using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>Several modes of failure in the analyses.</summary>
public class ModesTests
{
    private static readonly LifeModel Model = new(ThreeModes.Scenario);
    private static readonly RunOptions Options = new();

    // Two estimates of one number; both intervals are of 95 %, twice as wide they miss each other once in some thousand seeds.
    [Fact]
    public void Averaging_the_chances_and_counting_failures_agree_at_every_distance()
    {
        RiskResult exact = Risk(Model, RiskMethod.Auto, 4096, "plain");
        RiskResult counted = Risk(Model, RiskMethod.Crude, 8192, "plain");
        Assert.Equal(RiskMethod.Conditional, exact.Method);
        Assert.Equal([FailureMode.Fatigue, YieldMode.Name, BearingMode.Name], exact.Modes.Select(m => m.Mode));
        for (int i = 0; i < exact.Distances.Length; i++)
        {
            Interval a = exact.Distances[i].Probability, b = counted.Distances[i].Probability;
            Assert.True(Math.Abs(a.Estimate - b.Estimate) < (a.High - a.Low) + (b.High - b.Low),
                $"{exact.Distances[i].DistanceKm} km: {a} and {b}");
            foreach ((ModeRisk x, ModeRisk y) in exact.Modes.Zip(counted.Modes))
            {
                Assert.Equal(x.First[i], y.First[i], 0.03); // 5 standard errors of 8192 counts about a half
            }
        }
    }

    [Fact]
    public void The_modes_add_up_and_each_is_worth_something()
    {
        RiskResult result = Risk(Model, RiskMethod.Auto, 2048, "sobol");
        for (int i = 0; i < result.Distances.Length; i++)
        {
            Assert.Equal(result.Distances[i].Probability.Estimate, result.Modes.Sum(m => m.First[i]),
                1e-3 * result.Distances[i].Probability.Estimate);
        }

        double required = result.AtRequired.Probability.Estimate;
        Assert.All(result.Modes, m => Assert.InRange(m.Without, 0.1 * required, 0.99 * required));
    }

    // Where one mode is certain the others still matter: without it they are what is left. A section that yields dozens of times.
    [Fact]
    public void A_mode_that_is_certain_hides_no_other()
    {
        Scenario weak = Yielding(130);
        (double damage, double yields, double lives) = CertainModes.Rates(weak);
        double km = weak.RequiredKm;
        Assert.True(km * yields > 60);
        double without = 1 - CertainModes.Survival(km * damage, 0, km * lives);
        RiskResult result = Risk(new LifeModel(weak), RiskMethod.Auto, 1_024, "sobol");
        Assert.InRange(without, 0.05, 0.95);
        Assert.Equal(without, result.Modes[1].Without, 1e-9);
        Assert.Equal(1, result.Modes[0].Without, 1e-9);
    }

    // A mode that comes for certain at its own distance has all of what is whole there, for ever; two that come at once share it.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_mode_that_comes_for_certain_takes_what_is_left(bool isBefore)
    {
        Scenario sure = ThreeModes.With(Yielding(190) with
        {
            Inputs = [.. Yielding(190).Inputs.Where(i => i.Quantity != Quantities.BearingScatter)
                .Select(i => i.Quantity == Quantities.LifeScatter ? i with { Value = new Value.Certain(0) } : i)],
        }, (Quantities.BearingScatter, new Value.Certain(1)));
        (double damage, double yields, double lives) = CertainModes.Rates(sure);

        // A limit of one rating life for the bearing: over L10 of 1 / lives km it has failed, before none has.
        double bearingKm = 1 / lives, km = isBefore ? 0.9 * bearingKm : 1.3 * bearingKm;
        RiskResult result = Risk(new LifeModel(sure with { RequiredKm = km }), RiskMethod.Auto, 256, "sobol");
        Assert.Equal(RiskMethod.Conditional, result.Method);
        int place = Array.IndexOf([.. result.Distances.Select(d => d.DistanceKm)], km);
        double[] first = [.. result.Modes.Select(m => m.First[place])];
        double Whole(double at) => StandardNormal.Upper(Math.Log(at * damage) / 0.29) * Math.Exp(-at * yields);
        Assert.InRange(Whole(bearingKm), 0.05, 0.95);

        // Distances of the table are an eighth of a factor of e apart: what fails in that step goes to the certain one.
        Assert.InRange(first[2], isBefore ? 0 : Whole(bearingKm) - 1e-3, isBefore ? 0 : Whole(bearingKm * Math.Exp(-1.0 / 8)) + 1e-3);
        Assert.Equal(result.Distances[place].Probability.Estimate, first.Sum(), 1e-3);
    }

    // A mode is first by L with the integral of its hazard's rise times the survival of all: 200,000 steps of the closed forms. Each
    // eighth of a factor of e is shared out in proportion: within 0.002 here. Nothing but the chances is uncertain, so that
    // no interval is left; counting would leave 0.02.
    [Fact]
    public void The_mode_that_is_first_is_averaged_in_a_ranking()
    {
        Scenario scenario = Yielding(190) with { RequiredKm = 50_000 };
        (double damage, double yields, double lives) = CertainModes.Rates(scenario);
        RankResult result = RankAnalysis.Run(new LifeModel(scenario), new StudySettings(4_000, 1, "sobol"), Options);
        double[] first = new double[3], before = new double[3];
        const int steps = 200_000;
        for (int i = 1; i <= steps; i++)
        {
            double km = scenario.RequiredKm * i / steps;
            double[] hazard = [.. new[] { (damage, 0.0, 0.0), (0.0, yields, 0.0), (0.0, 0.0, lives) }.Select(
                r => -Math.Log(r.Item1 > 0 ? CertainModes.Survival(km * r.Item1, 0, 0) : r.Item2 > 0 ? Math.Exp(-km * yields)
                    : CertainModes.Bearing(km * lives)))];
            double survives = Math.Exp(-(hazard.Sum() + before.Sum()) / 2);
            for (int m = 0; m < 3; m++)
            {
                first[m] += survives * (hazard[m] - before[m]);
            }

            before = hazard;
        }

        for (int m = 0; m < 3; m++)
        {
            Assert.InRange(first[m], 0.01, 0.99);
            Assert.Equal(first[m], result.Modes[m].First.Estimate, 0.002);
            Assert.InRange(result.Modes[m].First.High - result.Modes[m].First.Low, 0, 1e-9);
        }

        Assert.Equal(result.Probability.Estimate, result.Modes.Sum(m => m.First.Estimate), 1e-9);
    }

    [Fact]
    public void Ranking_and_comparison_give_the_failure_probability_of_risk()
    {
        Interval risk = Risk(Model, RiskMethod.Auto, 4096, "sobol").AtRequired.Probability;
        RankResult rank = RankAnalysis.Run(Model, new StudySettings(60_000, 1, "sobol"), Options);
        Interval compared = Comparison.Run([Model], Model.Scenario.RequiredKm, new StudySettings(8192, 1, "sobol"),
            Options).Cases[0].Probability;
        Assert.Equal(risk.Estimate, rank.Probability.Estimate, 0.05 * risk.Estimate);
        Assert.InRange(risk.Estimate, compared.Low - 0.01, compared.High + 0.01);
        Assert.Contains(rank.Factors, f => f.Factor.Name == "bearing.life_scatter" && f.Failure.Total.Estimate > 0.005);
        Assert.Contains(rank.Factors, f => f.Factor.Name == "axle.largest_load_scatter");
    }

    [Fact]
    public void The_same_digits_on_one_thread_and_on_four_and_in_parts()
    {
        var settings = new StudySettings(3000, 5, "sobol");
        RiskState one = RiskAnalysis.Run(Model, settings, new RiskQuestion(), new RunOptions { Threads = 1 }).State;
        RiskState four = RiskAnalysis.Run(Model, settings, new RiskQuestion(), new RunOptions { Threads = 4 }).State;
        RiskState joined = RiskAnalysis.Join([.. Enumerable.Range(1, 3).Select(i =>
            RiskAnalysis.Run(Model, settings, new RiskQuestion { Part = new StudyPart(i, 3) }, Options).State)]);
        foreach (RiskState other in new[] { four, joined })
        {
            foreach ((LifeSummary a, LifeSummary b) in one.Replicates.Zip(other.Replicates))
            {
                Assert.Equal(a.Modes!.Sums().SelectMany(s => s), b.Modes!.Sums().SelectMany(s => s)); // bitwise
            }
        }
    }

    private static RiskResult Risk(LifeModel model, RiskMethod method, long evaluations, string sampling) =>
        RiskAnalysis.Run(model, new StudySettings(evaluations, 3, sampling), new RiskQuestion { Method = method }, Options).Result;

    private static Scenario Yielding(double strengthMPa) => CertainModes.Scenario with
    {
        RequiredKm = 30_000,
        Inputs = [.. CertainModes.Scenario.Inputs.Select(i => i.Quantity == Quantities.YieldStrength
            ? i with { Value = new Value.Certain(strengthMPa) } : i)],
    };
}
