using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>What a posterior run says of each item.</summary>
internal static class CauseSummary
{
    private const double AdverseShare = 0.1;

    /// <summary>The causes, the one of which the evidence says most first; known states last.</summary>
    public static ImmutableArray<Cause> Of(ImmutableArray<CauseItem> items, PosteriorSums sums, PriorRun prior, Evidence evidence) =>
    [
        .. items.Select((item, i) => item.Choice is { } choice
                ? OfChoice(item, i, choice.Values, choice.Weights, sums, evidence)
                : OfContinuous(item, i, prior.IsHighAdverse(i), sums, evidence))
            .OrderBy(c => c.IsKnown).ThenByDescending(c => c.Bits),
    ];

    private static Cause OfChoice(
        CauseItem item, int index, ImmutableArray<double> values, ImmutableArray<double> weights, PosteriorSums sums, Evidence evidence)
    {
        ImmutableArray<StateShift> states = [.. values.Select((v, k) => Shift(item.Factor.Show(v), weights[k], sums.State(index, k)))];
        return new Cause
        {
            Name = item.Name,
            Factor = item.Factor,
            Prior = null,
            Posterior = null,
            States = [.. states.OrderByDescending(s => s.Prior)],
            IsHighAdverse = null,
            IsKnown = evidence.Known.Any(k => k.Factor == item.Name),
            Measured = null,
            Bits = states.Sum(s => BitsOf(s.Prior, s.Posterior.Estimate)),
        };
    }

    private static Cause OfContinuous(CauseItem item, int index, bool isHighAdverse, PosteriorSums sums, Evidence evidence)
    {
        double edge = item.ValueOf(isHighAdverse ? PosteriorSums.TenthScore : -PosteriorSums.TenthScore);
        Interval tail = sums.Tail(index, isHighAdverse, PosteriorSums.TenthScore);
        Percentiles At(Func<double, double> score) => new(item.ValueOf(score(0.05)), item.ValueOf(score(0.5)), item.ValueOf(score(0.95)));
        return new Cause
        {
            Name = item.Name,
            Factor = item.Factor,
            Prior = At(StandardNormal.Quantile),
            Posterior = At(p => sums.QuantileScore(index, p)),
            States = [Shift((isHighAdverse ? "above " : "below ") + item.Factor.Show(edge), AdverseShare, tail)],
            IsHighAdverse = isHighAdverse,
            IsKnown = false,
            Measured = evidence.Measured.FirstOrDefault(m => m.Factor == item.Name),
            Bits = TenthBits(index, sums),
        };
    }

    private static StateShift Shift(string name, double prior, Interval posterior) =>
        new(name, prior, posterior, new Interval(posterior.Estimate / prior, posterior.Low / prior, posterior.High / prior));

    /// <summary>The divergence over the scenario's tenths.</summary>
    private static double TenthBits(int index, PosteriorSums sums)
    {
        double bits = 0, below = 0;
        for (int tenth = 1; tenth <= 10; tenth++)
        {
            double upTo = tenth == 10 ? 1 : sums.Tail(index, high: false, -StandardNormal.Quantile(tenth / 10.0)).Estimate;
            bits += BitsOf(AdverseShare, upTo - below);
            below = upTo;
        }

        return bits;
    }

    private static double BitsOf(double prior, double posterior) => posterior > 0 ? posterior * Math.Log2(posterior / prior) : 0;
}
