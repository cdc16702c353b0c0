using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;

namespace AxleRisk.Core.Analyses.Remedies;

/// <summary>Scenarios side by side, evaluated with the same random numbers.</summary>
public sealed record ComparisonResult
{
    /// <summary>The distance of the failure probabilities, km.</summary>
    public required double DistanceKm { get; init; }

    /// <summary>The failure probability as the risk study gives it; null where the analysis stands by itself.</summary>
    public RiskHeadline? Headline { get; init; }

    /// <summary>The scenarios in the order given; the first is what the others are compared with.</summary>
    public required ImmutableArray<ComparedCase> Cases { get; init; }

    /// <summary>
    /// Of each pair of changes that was asked for: the ratio of the failure probabilities over the product of the ratios of each alone;
    /// NaN where nothing fails in one of them.
    /// </summary>
    internal ImmutableArray<Interval> Products { get; init; } = [];

    /// <summary>
    /// Whether exact failure probabilities given the damage are averaged, or failures counted; the same in all scenarios.
    /// </summary>
    public required bool IsConditional { get; init; }

    /// <summary>The run behind it; its evaluations are those of each scenario.</summary>
    public required RunRecord Run { get; init; }

    /// <summary>
    /// The same with the risk study's figure of the first scenario: every other probability is that figure times the paired ratio, and
    /// every difference goes with it. Where the sample saw something else in the first (<see cref="RiskHeadline.Agrees"/>), as of
    /// a rare event,
    /// the others keep their own figures and are set against the risk study's without pairs; left as they are where nothing is
    /// known of the first.
    /// </summary>
    public ComparisonResult With(RiskHeadline headline)
    {
        double times = headline.Probability.Estimate / Cases[0].Probability.Estimate;
        ComparedCase Anchored(ComparedCase c) => c.Change is not { } change ? c with { Probability = headline.Probability }
            : !(headline.Probability.Estimate > 0) ? c
            : !headline.Agrees(Cases[0].Probability) ? c with
            { Change = change with { Difference = headline.Off(c.Probability), Ratio = headline.Under(c.Probability) } }
            : c with { Probability = headline.Times(change.Ratio), Change = change with { Difference = Scaled(change.Difference, times) } };
        return this with { Headline = headline, Cases = [.. Cases.Select(Anchored)] };
    }

    private static Interval Scaled(Interval interval, double times) =>
        new(times * interval.Estimate, times * interval.Low, times * interval.High);
}

/// <summary>One scenario of a comparison, with 95 % intervals.</summary>
/// <param name="Probability">P(life &lt; distance).</param>
/// <param name="B10Km">The distance by which a tenth has failed, km.</param>
/// <param name="Change">The change from the first scenario to this; null for the first itself.</param>
public sealed record ComparedCase(Interval Probability, Interval B10Km, CaseChange? Change);

/// <summary>A change between two scenarios with paired 95 % intervals: both were evaluated with the same random numbers.</summary>
/// <param name="Difference">The difference of the failure probabilities, negative where fewer fail.</param>
/// <param name="Ratio">Their ratio; NaN where nothing fails in the first.</param>
/// <param name="LifeRatio">The ratio of the B10 lives, above 1 where they last longer.</param>
public sealed record CaseChange(Interval Difference, Interval Ratio, Interval LifeRatio)
{
    /// <summary>Whether the failure probabilities can be told apart: the interval of the difference does not cover 0.</summary>
    public bool IsRiskDistinct => Difference.Low > 0 || Difference.High < 0;

    /// <summary>Whether the B10 lives can be told apart: the interval of the ratio does not cover 1.</summary>
    public bool IsLifeDistinct => LifeRatio.Low > 1 || LifeRatio.High < 1;
}
