using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>Whether an axle lasts a trip, where on it it would fail, and what can be set so that a target is kept.</summary>
public sealed record TripResult
{
    /// <summary>The mean distance of the trip, km.</summary>
    public required double Km { get; init; }

    /// <summary>The mean distance driven before it, km.</summary>
    public required double AlreadyDrivenKm { get; init; }

    /// <summary>P(reaches the trip's start), given what was seen of the vehicle.</summary>
    public required Interval Reached { get; init; }

    /// <summary>What was seen of the vehicle, which all figures are given; null where nothing was.</summary>
    public TripEvidence? Seen { get; init; }

    /// <summary>
    /// P(fails on the trip | reached its start); NaN where no vehicle reaches it, and where it was not resolved: then the upper
    /// end is a bound below 1.
    /// </summary>
    public required Interval Probability { get; init; }

    /// <summary>Whether any vehicle reaches the trip's start.</summary>
    public bool IsReached => !double.IsNaN(Probability.High);

    /// <summary>The modes in which the axle can fail.</summary>
    public ImmutableArray<FailureMode> Modes { get; init; } = [FailureMode.Fatigue];

    /// <summary>The legs, in the order they are driven.</summary>
    public required ImmutableArray<TripLegRisk> Legs { get; init; }

    /// <summary>The worst combinations for this trip among the vehicles that set out; empty where nothing stands out from chance.</summary>
    public required ImmutableArray<Combination> Combinations { get; init; }

    /// <summary>What was searched for them; null where nothing is uncertain or the run was ended early.</summary>
    public required SearchRecord? Searched { get; init; }

    /// <summary>The remedies, the least failure probability first; empty where there are none or the run was ended early.</summary>
    public required ImmutableArray<TripRemedy> Remedies { get; init; }

    /// <summary>The failure probability to be kept; null where none was stated.</summary>
    public required double? Target { get; init; }

    /// <summary>
    /// How far each thing that can be set may go under the target; empty where there is no target or the run was ended early.
    /// </summary>
    public required ImmutableArray<TripLimit> Limits { get; init; }

    /// <summary>The crew's card; null where there is no target, none was asked for or the run was ended early.</summary>
    public CardResult? Card { get; init; }

    /// <summary>What one look for the crack before each leg is worth; empty where no crack or way of looking is stated, or the run was
    /// ended early.</summary>
    public ImmutableArray<TripLook> Looks { get; init; } = [];

    /// <summary>The one look after which the trip is the safest; null where there is none.</summary>
    public TripLook? BestLook => TripLook.Best(Looks, true);

    /// <summary>
    /// The looks that keep the target where the trip as planned may not: one, or else one before every leg, the cheapest, then the safest;
    /// null where there are none, or none are needed.
    /// </summary>
    public TripLook? KeepingLook => Target is not { } target || Probability.High <= target ? null
        : Looks.Where(l => l.Trip.High <= target)
            .OrderBy(l => l.Leg is null).ThenBy(l => l.Cost).ThenBy(l => l.Trip.Estimate).FirstOrDefault();

    /// <summary>The rare-event answers, one for each leg that was too rare to sample, in the order they are driven.</summary>
    public ImmutableArray<RareLeg> Rare { get; init; } = [];

    /// <summary>Whether exact survival probabilities given the damage are averaged, or failures counted.</summary>
    public required bool IsConditional { get; init; }

    /// <summary>The run behind it; its evaluations are the vehicles of the sample, to which every question was put.</summary>
    public required RunRecord Run { get; init; }

    /// <summary>Evaluations of the damage model for all questions together.</summary>
    public required long AllEvaluations { get; init; }

    /// <summary>The limit of one kind of lever, of one leg's speed by the leg's name; null where it was not sought.</summary>
    public TripLimit? Limit(TripLeverKind kind, string? leg = null) =>
        Limits.FirstOrDefault(l => l.Lever.Kind == kind && l.Lever.Leg == leg);
}

/// <summary>What was seen of the vehicle that sets out, whole.</summary>
/// <param name="Evidence">What was seen.</param>
/// <param name="Unseen">P(fails on the trip | reached its start) had nothing of that been seen.</param>
/// <param name="Effective">How many equal vehicles those drawn are worth, each weighted by how likely it would be seen so.</param>
public sealed record TripEvidence(Evidence Evidence, Interval Unseen, double Effective);

/// <summary>A leg that was too rare to sample.</summary>
/// <param name="Leg">The leg.</param>
/// <param name="Answer">P(fails on it), of all vehicles, also those that do not reach the trip's start; its distance is that of
/// the leg's end from the trip's start.</param>
public sealed record RareLeg(string Leg, RareEventResult Answer);

/// <summary>One leg of a trip.</summary>
/// <param name="Name">The leg.</param>
/// <param name="Km">Its mean distance, km.</param>
/// <param name="EndKm">The mean distance at its end, from the trip's start, km.</param>
/// <param name="Conditional">P(fails on the leg | reached the leg's start); NaN where no vehicle reaches it.</param>
/// <param name="Share">The share of the trip's failures that happen on it; NaN where nothing fails.</param>
/// <param name="Cumulative">P(fails before the leg's end | reached the trip's start).</param>
public sealed record TripLegRisk(string Name, double Km, double EndKm, Interval Conditional, Interval Share, Interval Cumulative);

/// <summary>A trip with a remedy taken before its start, against the trip as planned, by the same vehicles.</summary>
/// <param name="Remedy">The remedy.</param>
/// <param name="Probability">P(fails on the trip | reached its start) with it.</param>
/// <param name="Difference">The difference from the trip as planned, negative where fewer fail; a paired interval.</param>
/// <param name="Ratio">The ratio to the trip as planned; NaN where nothing fails on that; a paired interval, and no estimate but
/// the ends where one of the two was not resolved.</param>
public sealed record TripRemedy(Remedy Remedy, Interval Probability, Interval Difference, Interval Ratio)
{
    /// <summary>Whether the two can be told apart: the interval of the difference does not cover 0.</summary>
    public bool IsDistinct => Difference.Low > 0 || Difference.High < 0;
}

/// <summary>Where one thing that can be set keeps the target.</summary>
/// <param name="Lever">What is set.</param>
/// <param name="Windows">The ranges in which the failure probability is not above the target, rising; empty where it is above
/// everywhere.</param>
/// <param name="BestAt">The value with the least failure probability of those tried.</param>
/// <param name="Least">The failure probability there.</param>
public sealed record TripLimit(TripLever Lever, ImmutableArray<TripWindow> Windows, double BestAt, Interval Least)
{
    /// <summary>Whether every value tried keeps the target.</summary>
    public bool IsAlwaysKept => Windows is [{ From: null, To: null }];

    /// <summary>
    /// Whether the target is kept by every value up to some limit, which is the first window's end; above it there may be other
    /// windows.
    /// </summary>
    public bool HasUpperLimit => Windows is [{ From: null, To: not null }, ..];
}

/// <summary>A range of values that keep a target.</summary>
/// <param name="From">Its lower end; null where it is that of the values tried. The interval is where the ends of the risk's 95 %
/// interval meet the target.</param>
/// <param name="To">Its upper end, likewise.</param>
public sealed record TripWindow(Interval? From, Interval? To);
