using System.Collections.Immutable;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Learning;

/// <summary>
/// What gauge runs teach of one unknown factor whose logarithm the measured one is: a normal prior and normal readings, so the posterior is
/// the conjugate normal (any textbook of Bayesian statistics). And ranking on what was learned.
/// </summary>
public class GaugeRunTests
{
    private static readonly BaseCaseResult Base = BaseCaseAnalysis.Run(new LifeModel(Plain([])));

    // Stress is proportional to its factor.
    [Fact]
    public void A_measured_stress_teaches_the_stress_factor()
    {
        double computed = Base.Axle!.Legs[0].StressRmsMPa;
        LearnedFactor factor = Learn(
            new Input("fatigue.stress_factor", Quantities.StressFactor, null, Unknown(1, 0.2), false),
            new GaugeRun(0, [], null, 1.15 * computed, 0.1, 2), new GaugeRun(0, [], null, 1.05 * computed, 0.2, 3));
        IsConjugate(factor, 0.2, (Math.Log(1.15), 0.1), (Math.Log(1.05), 0.2));
    }

    // So is a leg's damage to its own ratio.
    [Fact]
    public void A_measured_damage_teaches_the_ratio_of_its_leg()
    {
        double computed = Base.DamagePerKm;
        LearnedFactor factor = Learn(
            new Input("legs.gravel.damage_ratio", Quantities.LegDamageRatio, 0, Unknown(1, 0.6), false),
            new GaugeRun(0, [], 2.2 * computed, null, 0.25, 2));
        IsConjugate(factor, 0.6, (Math.Log(2.2), 0.25));
    }

    // ln life = theta + v: theta, as three known failures leave it, has sd 0.230542, v 0.45; the shares of its variance are their parts.
    [Fact]
    public void Ranking_a_learned_scenario_takes_what_is_left_to_know()
    {
        FieldData exact = LearnCase.Field with { Records = [.. LearnCase.Field.Records.Where(r => r.IsExact)] };
        LifeModel stated = LearnCase.Model(exact);
        LearnResult learned = LearnAnalysis.Run(
            stated, new LearnQuestion([100_000]) { Keeps = true }, new StudySettings(LearnAnalysis.LeastEvaluations, 1, "sobol"),
            new RunOptions());
        var model = new LifeModel(stated.Scenario with { Learned = learned.Shape!.Learned });
        RankResult result = RankAnalysis.Run(model, new StudySettings(200_000, 1, "sobol"), new RunOptions());
        double expected = 0.230542 * 0.230542 / ((0.230542 * 0.230542) + (0.45 * 0.45));
        RankedFactor ratio = result.Factors.Single(f => f.Factor.Name == "fatigue.damage_ratio");
        Assert.Equal(expected, ratio.Life.First.Estimate, 0.02);
        Assert.Equal(expected, ratio.LifeShare.Estimate, 0.02);
    }

    private static LearnedFactor Learn(Input unknown, params ImmutableArray<GaugeRun> runs) => LearnAnalysis.Run(
        new LifeModel(Plain([unknown]) with { Gauges = new GaugeData("gauges.csv", runs) }), new LearnQuestion([100_000]),
        new StudySettings(LearnAnalysis.LeastEvaluations, 1, "sobol"), new RunOptions()).Factors.Single();

    private static void IsConjugate(LearnedFactor factor, double priorSd, params (double Ln, double Sd)[] readings)
    {
        double precision = (1 / (priorSd * priorSd)) + readings.Sum(r => 1 / (r.Sd * r.Sd));
        double mean = readings.Sum(r => r.Ln / (r.Sd * r.Sd)) / precision, sd = 1 / Math.Sqrt(precision);
        Assert.Equal(mean, Math.Log(factor.Posterior!.Median), 0.02 * sd);
        Assert.Equal(mean + (1.644854 * sd), Math.Log(factor.Posterior.High), 0.05 * sd);
        Assert.Equal(mean - (1.644854 * sd), Math.Log(factor.Posterior.Low), 0.05 * sd);
        double nats = Math.Log(priorSd / sd) + ((((mean * mean) + (sd * sd)) / (priorSd * priorSd)) - 1) / 2;
        Assert.Equal(nats / Math.Log(2), factor.Bits, 0.03);
    }

    private static Value.Uncertain Unknown(double median, double sd) => new(new Lognormal(median, sd), Knowledge.Unknown);

    private static Scenario Plain(Input[] unknown) => LogLinear.Scenario with
    {
        Inputs =
        [
            .. LogLinear.Scenario.Inputs.Where(i => i.Quantity != Quantities.DamageRatio && !unknown.Any(u => u.Name == i.Name)),
            .. unknown,
        ],
    };
}
