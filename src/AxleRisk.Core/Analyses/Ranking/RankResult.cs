using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Ranking;

/// <summary>The factors by what they contribute to the spread of life and to failure before the required distance.</summary>
public sealed record RankResult
{
    /// <summary>The distance of the failure event, km.</summary>
    public required double RequiredKm { get; init; }

    /// <summary>The failure probability as the risk study gives it; null where the analysis stands by itself.</summary>
    public RiskHeadline? Headline { get; init; }

    /// <summary>P(life &lt; required distance), from this analysis' own sample.</summary>
    public required Interval Probability { get; init; }

    /// <summary>The factors, the largest share of failure first.</summary>
    public required ImmutableArray<RankedFactor> Factors { get; init; }

    /// <summary>How the shares were found.</summary>
    public required ShareMethod ShareMethod { get; init; }

    /// <summary>Pairs of independent base rows behind the shares; of random orders, also the number of orders.</summary>
    public required long SharePairs { get; init; }

    /// <summary>
    /// Half the width of the widest 95 % interval of a factor's share, of failure or of the spread of life, a fraction; infinite
    /// where one is unknown.
    /// </summary>
    public required double WidestHalf { get; init; }

    /// <summary>The half width that the run went for; 0 where it was to spend all its evaluations.</summary>
    public required double HalfWidthAsked { get; init; }

    /// <summary>The shares of the factors that differ between vehicles together, and of those that are unknown together.</summary>
    public required ImmutableArray<KnowledgeShare> ByKnowledge { get; init; }

    /// <summary>Which leg does the damage among the vehicles that fail, in the scenario's order; NaN where nothing fails.</summary>
    public required ImmutableArray<LegOfFailures> Legs { get; init; }

    /// <summary>Each mode of failure, in order; empty where fatigue is the only one.</summary>
    public ImmutableArray<ModeOfFailures> Modes { get; init; } = [];

    /// <summary>Whether the event's indices average the exact failure probability given the damage, or count failures.</summary>
    public required bool IsConditional { get; init; }

    /// <summary>Rows of the plan: each costs one evaluation for every column that is exchanged or pinned.</summary>
    public required long Rows { get; init; }

    /// <summary>The run behind it.</summary>
    public required RunRecord Run { get; init; }

    /// <summary>
    /// The same with the figure of the risk study; what is held is that figure times its paired ratio to the own sample's, where
    /// that agrees with it (<see cref="RiskHeadline.Agrees"/>).
    /// </summary>
    public RankResult With(RiskHeadline headline)
    {
        Pinned Anchored(Pinned p) => p.Ratio.Estimate > 0 && headline.Agrees(Probability) ? p with
        { Probability = headline.Times(p.Ratio) } : p;
        return this with
        {
            Headline = headline,
            Factors = [.. Factors.Select(f => f with
            {
                AtNominal = Anchored(f.AtNominal),
                AtLow = f.AtLow is { } low ? Anchored(low) : null,
                AtHigh = f.AtHigh is { } high ? Anchored(high) : null,
            })],
        };
    }
}

/// <summary>One factor's place.</summary>
public sealed record RankedFactor
{
    /// <summary>The factor.</summary>
    public required Factor Factor { get; init; }

    /// <summary>
    /// The factors it is correlated with: their indices are those of all of them together. Empty for an independent factor.
    /// </summary>
    public required ImmutableArray<Factor> RankedWith { get; init; }

    /// <summary>Its part of all shares of failure, a fraction; NaN where nothing fails.</summary>
    public required Interval FailureShare { get; init; }

    /// <summary>Its part of the variance of ln life, a fraction.</summary>
    public required Interval LifeShare { get; init; }

    /// <summary>Its place by share of failure, from 1; equal for factors that are tied.</summary>
    public required int Place { get; init; }

    /// <summary>Whether another factor has the same place: their intervals overlap.</summary>
    public required bool IsTied { get; init; }

    /// <summary>The indices of ln life.</summary>
    public required SobolPair Life { get; init; }

    /// <summary>The indices of the event 'fails before the required distance'; NaN where nothing fails.</summary>
    public required SobolPair Failure { get; init; }

    /// <summary>The failure probability with the factor held at its nominal.</summary>
    public required Pinned AtNominal { get; init; }

    /// <summary>The failure probability with the factor held at its 5 % point; null for a category and the road mix.</summary>
    public required Pinned? AtLow { get; init; }

    /// <summary>The failure probability with the factor held at its 95 % point; null for a category and the road mix.</summary>
    public required Pinned? AtHigh { get; init; }

    /// <summary>+1 where more of the factor means more failures, -1 where it means fewer, 0 where it cannot be told.</summary>
    public int Direction =>
        AtLow is null || AtHigh is null ? 0
        : AtHigh.Probability.Low > AtLow.Probability.High ? 1
        : AtHigh.Probability.High < AtLow.Probability.Low ? -1
        : 0;
}

/// <summary>First-order and total Sobol' index of one output, with 95 % intervals.</summary>
/// <param name="First">The share of the variance that the factor explains alone.</param>
/// <param name="Total">The share that would be left if all other factors were known: alone and together with others.</param>
public sealed record SobolPair(Interval First, Interval Total);

/// <summary>A failure probability with one factor held.</summary>
/// <param name="Value">The value it is held at, in its unit; NaN for the road mix, held at its stated shares.</param>
/// <param name="Probability">The failure probability.</param>
/// <param name="Ratio">How many times that of the same sample with the factor free, paired; NaN where nothing fails.</param>
public sealed record Pinned(double Value, Interval Probability, Interval Ratio);

/// <summary>How shares were found.</summary>
public enum ShareMethod
{
    /// <summary>By all subsets of the factors.</summary>
    AllSubsets,

    /// <summary>By random orders of the factors.</summary>
    RandomOrders,
}

/// <summary>
/// The shares that all factors of one kind have together: what better data could remove, and what only another design can.
/// </summary>
/// <param name="Knowledge">The kind.</param>
/// <param name="Factors">The number of factors.</param>
/// <param name="Failure">Their share of failure, a fraction.</param>
/// <param name="Life">Their share of the variance of ln life, a fraction.</param>
public sealed record KnowledgeShare(Knowledge Knowledge, int Factors, Interval Failure, Interval Life);

/// <summary>A leg's part of the damage among the vehicles that fail.</summary>
/// <param name="Name">The leg.</param>
/// <param name="DamageShare">The mean share of the damage, a fraction.</param>
public sealed record LegOfFailures(string Name, Interval DamageShare);

/// <summary>A mode of failure among those that are on.</summary>
/// <param name="Mode">The mode.</param>
/// <param name="First">The probability that it fails first, before the required distance.</param>
/// <param name="Without">The failure probability with the mode switched off; NaN where failures are counted.</param>
public sealed record ModeOfFailures(FailureMode Mode, Interval First, Interval Without);
