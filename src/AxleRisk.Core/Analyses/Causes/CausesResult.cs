using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>What the evidence says of the factors and of the named explanations.</summary>
public sealed record CausesResult
{
    /// <summary>The evidence it rests on.</summary>
    public required Evidence Evidence { get; init; }

    /// <summary>
    /// How surprising the life is under the scenario: P(fails before the first and before the last of its distances), the
    /// same where there is one distance; null where nothing is known of the life, or the risk study was not asked.
    /// </summary>
    public (Interval From, Interval To)? FailureBefore { get; private init; }

    /// <summary>The same with the risk study's figures of the life's distances.</summary>
    public CausesResult With(ImmutableArray<RiskHeadline> atDistances) =>
        atDistances.IsEmpty ? this : this with
        {
            FailureBefore = (Evidence.Life is LifeEvidence.FailedBetween(0, _) ? new Interval(0, 0, 0) : atDistances[0].Probability,
                atDistances[^1].Probability),
        };

    /// <summary>The factors, the one of which the evidence says most first.</summary>
    public required ImmutableArray<Cause> Causes { get; init; }

    /// <summary>
    /// The explanations that are weighed, their pairs, 'nothing unusual' of them, and those that known states settle; empty where
    /// none is named.
    /// </summary>
    public required ImmutableArray<ExplanationShift> Explanations { get; init; }

    /// <summary>
    /// How likely each mode of failure, a checked section among them, is to have failed as the axle has; empty where the scenario has one
    /// checked section alone, or the axle has not failed.
    /// </summary>
    public ImmutableArray<ModeFound> Modes { get; init; } = [];

    /// <summary>Whether the likelihood of the life given the damage is exact, or lives are counted.</summary>
    public required bool IsConditional { get; init; }

    /// <summary>What measurements would tell of the two leading explanations; null where none were asked of, or there are no two.</summary>
    public Apart? Apart { get; init; }

    /// <summary>The effective sample size of the posterior, (sum of weights)^2 / sum of squared weights.</summary>
    public required double EffectiveSampleSize { get; init; }

    /// <summary>The share of all weight that the heaviest row has.</summary>
    public required double GreatestShare { get; init; }

    /// <summary>Rows of the weighted sample.</summary>
    public required long Rows { get; init; }

    /// <summary>Evaluations of the same rows with one thing otherwise, among those of the run.</summary>
    public required long TwinEvaluations { get; init; }

    /// <summary>Pilots drawn to find where the evidence lies.</summary>
    public required int Pilots { get; init; }

    /// <summary>Whether the sampler was moved toward the evidence, or draws from the scenario.</summary>
    public required bool IsMoved { get; init; }

    /// <summary>The run behind it.</summary>
    public required RunRecord Run { get; init; }
}

/// <summary>A mode of failure given the evidence.</summary>
/// <param name="Mode">The mode.</param>
/// <param name="Posterior">The probability that it has failed by the distance of the evidence.</param>
public sealed record ModeFound(FailureMode Mode, Interval Posterior);

/// <summary>What the evidence says of one factor, or of one leg's share of an uncertain road mix.</summary>
public sealed record Cause
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>The factor it belongs to.</summary>
    public required Factor Factor { get; init; }

    /// <summary>Its name in plain words.</summary>
    public string Label => Factor.LabelOf(Name);

    /// <summary>Its 5, 50 and 95 % points in the scenario; null for a choice.</summary>
    public required Percentiles? Prior { get; init; }

    /// <summary>The same given the evidence.</summary>
    public required Percentiles? Posterior { get; init; }

    /// <summary>The adverse tenth of a continuous factor, or the states of a choice, likelier ones of the scenario first.</summary>
    public required ImmutableArray<StateShift> States { get; init; }

    /// <summary>Whether more of it goes with more damage; null for a choice.</summary>
    public required bool? IsHighAdverse { get; init; }

    /// <summary>Whether its state is evidence and not a finding.</summary>
    public required bool IsKnown { get; init; }

    /// <summary>Its measurement, where there is one.</summary>
    public required Measurement? Measured { get; init; }

    /// <summary>
    /// What the evidence says of it, in bits: the divergence of its tenths or states from the scenario's (Kullback and Leibler
    /// 1951).
    /// </summary>
    public required double Bits { get; init; }
}

/// <summary>The 5, 50 and 95 % points of a factor, in its unit.</summary>
/// <param name="Low">The 5 % point.</param>
/// <param name="Median">The median.</param>
/// <param name="High">The 95 % point.</param>
public readonly record struct Percentiles(double Low, double Median, double High);

/// <summary>A state, or a range of values, before and after the evidence.</summary>
/// <param name="Name">The state as the user would write it, or the range: <c>above 5.2</c>.</param>
/// <param name="Prior">Its probability in the scenario.</param>
/// <param name="Posterior">Its probability given the evidence.</param>
/// <param name="Times">How many times likelier it has become: the ratio of the probabilities.</param>
public sealed record StateShift(string Name, double Prior, Interval Posterior, Interval Times);

/// <summary>An explanation, a pair of them, or 'nothing unusual', before and after the evidence.</summary>
/// <param name="Names">The explanations that hold together; empty for 'nothing unusual': none of those weighed.</param>
/// <param name="Prior">Its probability before: as stated, or what follows from the scenario and what is stated.</param>
/// <param name="Posterior">Its probability given the evidence.</param>
public sealed record ExplanationShift(ImmutableArray<string> Names, double Prior, Interval Posterior)
{
    /// <summary>The priors for which the posterior is told besides, so that readers may bring their own.</summary>
    public static ImmutableArray<double> OtherPriors { get; } = [0.02, 0.05, 0.10, 0.20, 0.30, 0.50];

    /// <summary>Whether a known state says that it holds or does not: then there is nothing to weigh. Null where it is weighed.</summary>
    public bool? Settled { get; init; }

    /// <summary>
    /// By how much the evidence multiplied its odds: the ratio of how likely the evidence is with it and without it, whatever its
    /// own prior; an end may be infinite. Null where it is settled.
    /// </summary>
    public Interval? OddsMultiplied { get; init; }

    /// <summary>Its posterior over other priors; empty where it is settled.</summary>
    public ImmutableArray<(double Prior, Interval Posterior)> OverPriors => OddsMultiplied is not { } odds ? [] :
        [.. OtherPriors.Select(p => (p, new Interval(After(p, odds.Estimate), After(p, odds.Low), After(p, odds.High))))];

    /// <summary>What of this axle without it; null where that is not stated or there is nothing to ask.</summary>
    public ButFor? ButFor { get; init; }

    private static double After(double prior, double odds) => double.IsInfinity(odds) ? 1 : prior * odds / (1 - prior + (prior * odds));
}

/// <summary>What would have become of the same axle without an explanation, given all evidence and that the explanation held.</summary>
/// <param name="Instead">What its inputs would have been.</param>
/// <param name="WouldHavePassedKm">The distance asked of, km.</param>
/// <param name="FailedByKm">The distance by which it had failed, km.</param>
/// <param name="Passes">The probability that it would have passed the distance asked of.</param>
/// <param name="StillFails">The probability that it would still have failed by the distance by which it had.</param>
public sealed record ButFor(
    ImmutableArray<Change> Instead, double WouldHavePassedKm, double FailedByKm, Interval Passes, Interval StillFails)
{
    /// <summary>The probability, given all evidence, that the explanation held and the axle would have passed without it.</summary>
    public required Interval HeldAndPasses { get; init; }
}
