using AxleRisk.Core.Analyses.Decisions;
using AxleRisk.Core.Analyses.Measurements;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Measurements;

/// <summary>
/// What knowing is worth of factors that depend on each other, as data have taught or by a correlation. Two unknowns scale the damage,
/// theta = 0.8 z1 + 0.5 z2 (or + ln of a choice), so that P(life &lt; km | theta) = Phi((ln(km / median) + theta) / S); what is unknown
/// beside a held z1 is normal, and Phi of a normal sum averages to Phi with the variances added. All invented.
/// </summary>
public sealed class MeasureLearnedTests
{
    private const double FailureCost = 1000, Price = 150, Half = 0.5, Own = LogLinear.RatioSigma, OfLeg = 0.5;
    private const string First = "fatigue.damage_ratio", Second = "legs.gravel.damage_ratio";

    private static readonly double Km = LogLinear.MedianKm * 0.5;

    // Learned: means and deviations of the two scores, and their correlation.
    private const double M1 = 0.3, M2 = -0.2, S1 = 0.5, S2 = 0.6, R = -0.7;

    private static readonly Distribution LegRatio = new Lognormal(1, OfLeg);

    // Given one score the other has mean m2 + r s2 (z1 - m1) / s1 and variance s2^2 (1 - r^2).
    [Fact]
    public void Two_that_were_learned_together_are_worth_what_the_quadrature_says()
    {
        MeasureResult result = Run(Learned(LegRatio, new Learned([], [First, Second],
            [LearnedState.OfTriangle([], 1, [M1, M2], [S1 * S1, R * S1 * S2, S2 * S2])], [])));
        Assert.Empty(result.LeftOut);
        double first = Worth(M1, S1, z => (Own * z) + (OfLeg * (M2 + (R * S2 * (z - M1) / S1))), OfLeg * S2 * Math.Sqrt(1 - (R * R)));
        double second = Worth(M2, S2, z => (OfLeg * z) + (Own * (M1 + (R * S1 * (z - M2) / S2))), Own * S1 * Math.Sqrt(1 - (R * R)));
        Assert.True(first > 1.5 && Math.Abs(first - second) > 1);
        Assert.Equal(first, PerfectOf(result, First), 0.03 * first);
        Assert.Equal(second, PerfectOf(result, Second), 0.03 * Math.Max(1, second));

        // Drawn apart, as if nothing hung together, the first would be worth much more.
        Assert.True(Worth(M1, S1, z => (Own * z) + (OfLeg * M2), OfLeg * S2) > 1.5 * first);
    }

    // Scores correlated by rho: the other has mean rho z and variance 1 - rho^2.
    [Fact]
    public void Two_unknowns_that_are_correlated_are_worth_what_the_quadrature_says()
    {
        Scenario scenario = Learned(LegRatio, null) with { Correlations = [new RankCorrelation(First, Second, -0.6)] };
        double rho = GaussianCopula.ToPearson(-0.6), left = Math.Sqrt(1 - (rho * rho));
        MeasureResult result = Run(scenario);
        Assert.Empty(result.LeftOut);
        double first = Worth(0, 1, z => (Own + (OfLeg * rho)) * z, OfLeg * left);
        double second = Worth(0, 1, z => (OfLeg + (Own * rho)) * z, Own * left);
        Assert.True(first > 10);
        Assert.Equal(first, PerfectOf(result, First), 0.03 * first);
        Assert.Equal(second, PerfectOf(result, Second), 0.03 * Math.Max(1, second));
    }

    /// <summary>
    /// A choice of two states, with another mean of the score in each: against the states' closed form, and against brute force, 600,000
    /// draws of the joint distribution sorted by what would be known, a thousand of them at a time.
    /// </summary>
    [Fact]
    public void A_choice_and_a_score_learned_with_it_are_worth_what_brute_force_says()
    {
        const double P = 0.6, Low = -0.9, High = 0.8, SdLow = 0.35, SdHigh = 0.25, Deviation = 0.3;
        double[] ratios = [1, 2.2];
        Scenario scenario = Learned(new NumberChoice(ratios, [0.5, 0.5]), new Learned([Second], [First],
            [
                LearnedState.OfTriangle([0], P, [High], [SdHigh * SdHigh]), LearnedState.OfTriangle([1], 1 - P, [Low], [SdLow * SdLow]),
            ], [])) with
        { Measurements = [new("gauge", First, Deviation, 1, 1)] };
        MeasureResult result = Run(scenario);

        const int Rows = 600_000, OfBin = 1000;
        double[][] unit = Workspace.Columns(3, Rows);
        for (int i = 0; i < unit.Length; i++)
        {
            new RandomStream(new StreamKey(20, $"brute force {i}")).FillUnit(0, unit[i]);
        }

        (double Score, double Reading, int State, double Benefit)[] rows = [.. Enumerable.Range(0, Rows).Select(row =>
        {
            int state = unit[0][row] < P ? 0 : 1;
            double normal = StandardNormal.Quantile(unit[1][row]), z = state == 0 ? High + (SdHigh * normal) : Low + (SdLow * normal);
            double theta = (Own * z) + Math.Log(ratios[state]);
            double benefit = (FailureCost * (Failed(theta, 1) - Failed(theta, Half))) - Price;
            return (z, Math.Exp(Own * z) + (Deviation * StandardNormal.Quantile(unit[2][row])), state, benefit);
        })];
        double Told(IEnumerable<double> benefits) => benefits.Chunk(OfBin).Average(b => Math.Max(0, b.Average()))
            - Math.Max(0, rows.Average(r => r.Benefit));
        double perfect = Told(rows.OrderBy(r => r.Score).Select(r => r.Benefit));
        double read = Told(rows.OrderBy(r => r.Reading).Select(r => r.Benefit));
        double choice = rows.GroupBy(r => r.State).Sum(g => g.Count() * Math.Max(0, g.Average(r => r.Benefit))) / Rows
            - Math.Max(0, rows.Average(r => r.Benefit));
        Assert.True(perfect > read && read > 3 && choice > 3);

        // Benefits spread by some 60, and 600,000 of them: 0.1; the cubics follow a step between two states.
        Assert.Equal(perfect, PerfectOf(result, First), 0.03 * perfect);
        Assert.Equal(choice, PerfectOf(result, Second), 0.03 * choice);
        Assert.Equal(read, Assert.Single(result.Measurements).Value.Estimate, 0.06 * read);
    }

    /// <summary>Conditional moments of three joint normals by the textbook rule, and a state that is ruled out.</summary>
    [Fact]
    public void Given_one_score_the_others_have_their_conditional_moments()
    {
        double[] triangle = [1.0, 0.5, 2.0, -0.3, 0.4, 0.8];
        var learned = new Learned(["c"], ["x", "y", "z"],
            [LearnedState.OfTriangle([0], 0.25, [1, 2, 3], triangle), LearnedState.OfTriangle([1], 0.75, [4, 2, 3], triangle)], []);
        Learned given = learned.GivenScore("x", 1.5);
        LearnedState state = given.States[0];
        Assert.Equal([1.5, 2.25, 2.85], state.Mean.Select(m => Math.Round(m, 12)));
        Assert.Equal(0, state.Deviation(0));
        Assert.Equal(2.0 - 0.25, state.Covariance[1, 1], 1e-12);
        Assert.Equal(0.4 + 0.15, state.Covariance[1, 2], 1e-12);
        Assert.Equal(0.8 - 0.09, state.Covariance[2, 2], 1e-12);

        // Bayes: 0.25 phi(0.5) to 0.75 phi(-2.5).
        double odds = 0.25 * StandardNormal.Density(0.5) / (0.75 * StandardNormal.Density(2.5));
        Assert.Equal(odds / (1 + odds), state.Probability, 1e-12);
        Assert.Equal([(1, 1.0)], learned.GivenState("c", 1).States.Select(s => (s.States[0], s.Probability)));
    }

    /// <summary>One factor alone that was learned of is not as stated: also of the Miner sum, which is averaged exactly.</summary>
    [Fact]
    public void The_risk_of_a_learned_Miner_sum_is_that_of_what_was_learned()
    {
        Scenario scenario = LogLinear.Scenario with
        {
            RequiredKm = Km,
            Learned = new Learned([], ["fatigue.miner_sum"], [LearnedState.OfTriangle([], 1, [1.0], [0.09])], []),
        };
        (RiskResult risk, _) = RiskAnalysis.Run(
            new LifeModel(scenario), new StudySettings(65_536, 7, "sobol"), new RiskQuestion(), new RunOptions { Threads = 2 });
        const double OfMiner = 0.29;
        double scatter = (LogLinear.ScaleSigma * LogLinear.ScaleSigma) - (OfMiner * OfMiner);
        double expected = StandardNormal.Cumulative(
            (Math.Log(Km / LogLinear.MedianKm) - OfMiner) / Math.Sqrt((Own * Own) + scatter + (OfMiner * OfMiner * 0.09)));
        Assert.Equal(expected, risk.AtRequired.Probability.Estimate, 0.01 * expected);
    }

    /// <summary>What was learned of a factor does not hold of another distribution that an option puts in its place.</summary>
    [Fact]
    public void An_option_that_states_another_distribution_has_that()
    {
        Scenario scenario = Learned(LegRatio, new Learned([], [First, Second],
            [LearnedState.OfTriangle([], 1, [M1, M2], [S1 * S1, R * S1 * S2, S2 * S2])], [])) with
        {
            Remedies = [new Remedy("other", Price,
                [new Change.ToValue(First, new Value.Uncertain(new Lognormal(0.7, 0.3), Knowledge.Unknown))])],
        };
        DecideResult result = DecideAnalysis.Run(
            new LifeModel(scenario), new StudySettings(65_536, 7, "sobol"), new RunOptions { Threads = 2 });
        double expected = Averaged(Math.Log(0.7) + (OfLeg * M2), Math.Sqrt(0.09 + Math.Pow(OfLeg * S2, 2)), 1);
        Within(expected, result.Options[1].Failed);
        double asItIs = Averaged(
            (Own * M1) + (OfLeg * M2),
            Math.Sqrt(Math.Pow(Own * S1, 2) + Math.Pow(OfLeg * S2, 2) + (2 * Own * OfLeg * R * S1 * S2)), 1);
        Within(asItIs, result.Options[0].Failed);
    }

    // Sixteen replicates: half a width is 2.1 standard errors, and one of them four.
    private static void Within(double expected, Interval told)
    {
        Assert.Equal(expected, told.Estimate, told.High - told.Low);
        Assert.True(told.High - told.Low < 0.15 * expected);
    }

    private static Scenario Learned(Distribution ofLeg, Learned? learned)
    {
        Scenario scenario = LogLinear.Scenario;
        return scenario with
        {
            RequiredKm = Km,
            Inputs =
            [
                .. scenario.Inputs.Select(i => i.Value is Value.Uncertain u && i.Name == First
                    ? i with { Value = new Value.Uncertain(u.Distribution, Knowledge.Unknown) } : i),
                new Input(Second, Quantities.LegDamageRatio, 0, new Value.Uncertain(ofLeg, Knowledge.Unknown), false),
            ],
            Learned = learned,
            Remedies = [new Remedy("half", Price, [new Change.Times(First, Half)])],
            Decision = new Decision { FailureCost = new Value.Certain(FailureCost) },
        };
    }

    // Raiffa and Schlaifer 1961: E max(0, benefit given z) less max(0, E benefit); z is N(mean, deviation).
    private static double Worth(double mean, double deviation, Func<double, double> theta, double left)
    {
        double Benefit(double z) => (FailureCost * (Averaged(theta(z), left, 1) - Averaged(theta(z), left, Half))) - Price;
        double with = 0, all = 0;
        const double Step = 0.005;
        for (double u = -8 + (Step / 2); u < 8; u += Step)
        {
            double benefit = Benefit(mean + (deviation * u)), weight = Step * StandardNormal.Density(u);
            with += weight * Math.Max(0, benefit);
            all += weight * benefit;
        }

        return with - Math.Max(0, all);
    }

    // P(failed) where theta is normal.
    private static double Averaged(double theta, double deviation, double times) => StandardNormal.Cumulative(
        (Math.Log(Km * times / LogLinear.MedianKm) + theta)
        / Math.Sqrt((LogLinear.ScaleSigma * LogLinear.ScaleSigma) + (deviation * deviation)));

    private static double Failed(double theta, double times) => Averaged(theta, 0, times);

    private static double PerfectOf(MeasureResult result, string name) =>
        result.Factors.Single(f => f.Factor.Name == name).Perfect.Estimate;

    private static MeasureResult Run(Scenario scenario) =>
        MeasureAnalysis.Run(new LifeModel(scenario), new StudySettings(4096, 7, "sobol"), new RunOptions { Threads = 2 });
}
