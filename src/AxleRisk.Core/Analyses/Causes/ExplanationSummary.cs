using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>The explanations, alone and in pairs, and 'nothing unusual'; those that known states settle stand apart.</summary>
internal sealed class ExplanationSummary
{
    private readonly ImmutableArray<Explanation> explanations;
    private readonly double[] patterns;
    private readonly double[] factors;
    private readonly PosteriorSums sums;
    private readonly double[][] groups;
    private readonly double meanFactor;

    private ExplanationSummary(ImmutableArray<Explanation> explanations, double[] patterns, double[] factors, PosteriorSums sums)
    {
        (this.explanations, this.patterns, this.factors, this.sums) = (explanations, patterns, factors, sums);
        groups = sums.Patterns;
        double[] total = [.. factors.Select((_, s) => groups.Sum(g => g[s]))];
        meanFactor = total.Zip(factors, (w, f) => w * f).Sum() / total.Sum();
    }

    /// <summary>Weighs them.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="evidence">The explanations, and the states that are known.</param>
    /// <param name="patterns">The probability of each pattern under the scenario's distributions.</param>
    /// <param name="factors">The factor that the stated priors put on each pattern.</param>
    /// <param name="sums">The posterior without these factors.</param>
    /// <param name="twinEvents">The explanations without which twins were evaluated.</param>
    public static ImmutableArray<ExplanationShift> Of(
        Scenario scenario, Evidence evidence, double[] patterns, double[] factors, PosteriorSums sums, ImmutableArray<int> twinEvents)
    {
        ImmutableArray<Explanation> explanations = evidence.Explanations;
        if (explanations.IsEmpty)
        {
            return [];
        }

        var summary = new ExplanationSummary(explanations, patterns, factors, sums);
        int[] settled = [.. Enumerable.Range(0, explanations.Length).Where(e => explanations[e].SettledBy(evidence.Known) is not null)];
        int[] open = [.. Enumerable.Range(0, explanations.Length).Except(settled)];
        int weighed = open.Sum(e => 1 << e);
        ExplanationShift Weigh(params int[] events) => summary.Weigh(events, weighed);
        ExplanationShift With(ExplanationShift shift, int e) => twinEvents.IndexOf(e) is >= 0 and var twin
            ? shift with { ButFor = summary.ButFor(scenario, evidence, e, twin) } : shift;
        IEnumerable<int[]> pairs = from i in open from j in open where i < j select new[] { i, j };
        return
        [
            .. open.Select(e => With(Weigh(e), e)).OrderByDescending(e => e.Posterior.Estimate),
            .. pairs.Select(Weigh).OrderByDescending(e => e.Posterior.Estimate),
            .. open.Length == 0 ? Array.Empty<ExplanationShift>() : [Weigh()],
            .. settled.Select(e => With(summary.Settled(e, explanations[e].SettledBy(evidence.Known) == true), e)),
        ];
    }

    private ExplanationShift Weigh(int[] events, int weighed)
    {
        int mask = events.Sum(e => 1 << e);
        double prior = PriorWeights.Probability(patterns, factors, mask, weighed);
        Interval posterior = sums.Bounded(
            Jackknife.Estimate(groups, s => PriorWeights.Probability(s, factors, mask, weighed)), factors.Max() / meanFactor);
        return new ExplanationShift([.. events.Select(e => explanations[e].Name)], prior, posterior)
        {
            OddsMultiplied = OddsMultiplied(prior, posterior, mask, weighed),
        };
    }

    /// <summary>
    /// The posterior odds over the prior's. The prior is a share of draws: its own binomial error is added to that of the sample,
    /// which is too wide by far where the draws are of low discrepancy.
    /// </summary>
    private Interval OddsMultiplied(double prior, Interval posterior, int mask, int weighed)
    {
        double before = Odds(prior);
        if (!(posterior.Estimate is > 0 and < 1))
        {
            return new Interval(Odds(posterior.Estimate) / before, Odds(posterior.Low) / before, Odds(posterior.High) / before);
        }

        Interval log = Jackknife.Estimate(groups, s => Math.Log(Odds(PriorWeights.Probability(s, factors, mask, weighed))));
        double drawn = PriorWeights.Probability(patterns, [.. factors.Select(_ => 1.0)], mask, weighed);
        double ofPrior = -StandardNormal.Quantile(0.025) / Math.Sqrt(PatternPrior.Draws * drawn * (1 - drawn));
        double half = Math.Sqrt(Math.Pow(log.High - log.Estimate, 2) + (ofPrior * ofPrior));
        double estimate = Math.Exp(log.Estimate) / before;

        // A group without any weight on it leaves the jackknife without a number: then the bounds of the probability tell.
        return double.IsFinite(half)
            ? new Interval(estimate, estimate * Math.Exp(-half), estimate * Math.Exp(half))
            : new Interval(estimate, Odds(posterior.Low) / before, Odds(posterior.High) / before);
    }

    /// <summary>Shares of the weight in which the explanation holds, by the delete-one-group jackknife; null where it never does.</summary>
    private ButFor? ButFor(Scenario scenario, Evidence evidence, int e, int twin)
    {
        double Held(double[] s) => Weight(s, e);
        double held = groups.Sum(Held);
        if (!(held > 0))
        {
            return null;
        }

        double share = held / groups.Sum(g => Weight(g, null));
        double[][] passes = sums.TwinPasses(twin), fails = sums.TwinFails(twin);
        Interval Of(double[][] of, int? given, double greatest)
        {
            double[][] parts = [.. groups.Zip(of, (g, p) => new[] { Held(p), Weight(g, given) })];
            return sums.Bounded(Jackknife.Estimate(parts, s => s[0] / s[1]), factors.Max() / meanFactor * greatest);
        }

        return new ButFor(
            explanations[e].Instead, Twin.PassesOf(scenario, evidence)!.Value, evidence.Life!.FailedByKm!.Value,
            Of(passes, e, 1 / share), Of(fails, e, 1 / share))
        {
            HeldAndPasses = Of(passes, null, 1),
        };
    }

    // The weight of the patterns in which an explanation holds, or of all.
    private double Weight(double[] of, int? e) =>
        of.Select((w, s) => e is null || (s >> e.Value & 1) == 1 ? w * factors[s] : 0).Sum();

    private ExplanationShift Settled(int e, bool holds) =>
        new(
            [explanations[e].Name], PriorWeights.Probability(patterns, factors, 1 << e),
            holds ? new Interval(1, 1, 1) : new Interval(0, 0, 0))
        { Settled = holds };

    private static double Odds(double p) => p >= 1 ? double.PositiveInfinity : p / (1 - p);
}
