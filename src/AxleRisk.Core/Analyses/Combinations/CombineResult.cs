using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>What factors do together to failure before the required distance.</summary>
public sealed record CombineResult
{
    /// <summary>The distance of the failure event, km.</summary>
    public required double RequiredKm { get; init; }

    /// <summary>The failure probability as the risk study gives it; null where the analysis stands by itself.</summary>
    public RiskHeadline? Headline { get; init; }

    /// <summary>P(life &lt; required distance), from the sample that was searched.</summary>
    public required Interval Probability { get; init; }

    /// <summary>The ranges and states that were combined.</summary>
    public required ImmutableArray<AdverseRange> Ranges { get; init; }

    /// <summary>
    /// Pairs of ranges that are worse than the average, of the strongest factors; the largest departure from multiplication (in
    /// standard errors) first.
    /// </summary>
    public required ImmutableArray<PairEffect> Pairs { get; init; }

    /// <summary>
    /// The interaction indices of the strongest factors' pairs, the largest Shapley interaction first; empty where the run was
    /// ended early.
    /// </summary>
    public required ImmutableArray<InteractionPair> Interactions { get; init; }

    /// <summary>The worst combinations, the highest failure probability first; empty where nothing stands out from chance.</summary>
    public required ImmutableArray<Combination> Combinations { get; init; }

    /// <summary>What was searched.</summary>
    public required SearchRecord Searched { get; init; }

    /// <summary>Whether exact failure probabilities given the damage were used, or failures counted.</summary>
    public required bool IsConditional { get; init; }

    /// <summary>The run behind it; its evaluations are those of the search and of the interaction indices together.</summary>
    public required RunRecord Run { get; init; }
}

/// <summary>Two ranges together.</summary>
/// <param name="First">The one range.</param>
/// <param name="Second">The other.</param>
/// <param name="Together">P(failure | in both).</param>
/// <param name="Multiplied">P(failure | first) P(failure | second) / P(failure): what they would give if their effects
/// multiplied. May exceed 1.</param>
/// <param name="Ratio">The first over the second.</param>
/// <param name="Likelihood">P(in both).</param>
/// <param name="Rows">Sampled rows in both.</param>
/// <param name="IsNotable">Whether the two figures differ beyond chance, after Bonferroni correction for the number of pairs.</param>
public sealed record PairEffect(
    AdverseRange First, AdverseRange Second, Interval Together, Interval Multiplied, Interval Ratio, double Likelihood, int Rows,
        bool IsNotable)
{
    /// <summary>Whether the two factors are correlated: they then share a part of their effects, and the product counts it twice.</summary>
    public bool AreCorrelated { get; init; }
}

/// <summary>The interaction of two factors in the variance of the event, as fractions of that variance.</summary>
/// <param name="FirstFactors">The one factor, or group of correlated factors.</param>
/// <param name="SecondFactors">The other.</param>
/// <param name="SecondOrder">The second-order Sobol' index: what both explain together beyond what each explains alone.</param>
/// <param name="Shapley">The Shapley interaction index (Grabisch and Roubens 1999) of the game of closed indices played by the
/// strongest factors.</param>
public sealed record InteractionPair(
    ImmutableArray<Factor> FirstFactors, ImmutableArray<Factor> SecondFactors, Interval SecondOrder, Interval Shapley)
{
    /// <summary>The name of the one, or the names of a group.</summary>
    public string First => string.Join(" + ", FirstFactors.Select(f => f.Name));

    /// <summary>The name of the other.</summary>
    public string Second => string.Join(" + ", SecondFactors.Select(f => f.Name));

    /// <summary>The one in plain words.</summary>
    public string FirstLabel => string.Join(" + ", FirstFactors.Select(f => f.Label));

    /// <summary>The other in plain words.</summary>
    public string SecondLabel => string.Join(" + ", SecondFactors.Select(f => f.Label));
}

/// <summary>One dangerous combination.</summary>
public sealed record Combination
{
    /// <summary>Its ranges and states, one to four.</summary>
    public required ImmutableArray<AdverseRange> Members { get; init; }

    /// <summary>P(failure | all of them).</summary>
    public required Interval Probability { get; init; }

    /// <summary>That probability over the average.</summary>
    public required Interval Lift { get; init; }

    /// <summary>The share of all failures that it covers.</summary>
    public required Interval Coverage { get; init; }

    /// <summary>How likely a vehicle is to be like this.</summary>
    public required double Likelihood { get; init; }

    /// <summary>What the members would give if their effects multiplied; may exceed 1.</summary>
    public required Interval Multiplied { get; init; }

    /// <summary>Whether it is worse than that beyond chance, corrected for the number looked at.</summary>
    public required bool ExceedsParts { get; init; }

    /// <summary>Sampled rows inside.</summary>
    public required int Rows { get; init; }

    /// <summary>The effective number of failures behind the probability.</summary>
    public required double EffectiveFailures { get; init; }
}

/// <summary>What the search looked at.</summary>
/// <param name="Limits">What a combination needed.</param>
/// <param name="Rows">The sampled rows that were searched.</param>
/// <param name="Ranges">The number of ranges and states.</param>
/// <param name="Possible">The number of combinations that could be made of them, both ends of every factor counted: the number
/// the claims are corrected for.</param>
/// <param name="Evaluated">The combinations that were evaluated; the rest lies inside combinations with too few rows or failures.</param>
/// <param name="Eligible">Those with enough rows and failures.</param>
public sealed record SearchRecord(CombineLimits Limits, int Rows, int Ranges, double Possible, long Evaluated, int Eligible);
