using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>The crew's card: the least travel time that keeps the target, over all speeds, loads and remedies together.</summary>
public sealed record CardResult
{
    /// <summary>The travel time, h.</summary>
    public required double Hours { get; init; }

    /// <summary>The travel time at the planned speeds, h.</summary>
    public required double HoursAsPlanned { get; init; }

    /// <summary>The target.</summary>
    public required double Target { get; init; }

    /// <summary>The failure probability on the trip, by a sample that chose nothing.</summary>
    public required Interval Risk { get; init; }

    /// <summary>Whether the whole interval of the risk keeps the target; if not, this is the card of the least risk found.</summary>
    public required bool KeepsTarget { get; init; }

    /// <summary>The legs, in the order they are driven.</summary>
    public required ImmutableArray<CardLeg> Legs { get; init; }

    /// <summary>The load on every leg, kg; null where it stays as planned.</summary>
    public required double? PayloadKg { get; init; }

    /// <summary>The remedies taken before the start, in file order.</summary>
    public required ImmutableArray<Remedy> Remedies { get; init; }

    /// <summary>What each constraint costs in travel time; empty where no combination keeps the target.</summary>
    public required ImmutableArray<CardPrice> Prices { get; init; }

    /// <summary>The best one look for the crack at the card's speeds; null where there is none, or the axle is a new one.</summary>
    public TripLook? Look { get; init; }

    /// <summary>Notes for the crew, of the scenario.</summary>
    public required string Notes { get; init; }

    /// <summary>Combinations of load and remedies that were searched.</summary>
    public required int Searched { get; init; }

    /// <summary>Vehicles that sorted them.</summary>
    public required long SortingRows { get; init; }

    /// <summary>Those that were left after that, and were searched with more vehicles.</summary>
    public required int SearchedWithMore { get; init; }

    /// <summary>Vehicles of the search; the risk is told of others.</summary>
    public required long SearchRows { get; init; }

    /// <summary>Vehicles of the sample that the risk is told of.</summary>
    public required long Rows { get; init; }
}

/// <summary>One leg of the card.</summary>
/// <param name="Name">The leg.</param>
/// <param name="Km">Its mean distance, km.</param>
/// <param name="PlannedKmPerHour">The planned speed, km/h.</param>
/// <param name="KmPerHour">The speed not to be exceeded, km/h.</param>
/// <param name="Share">The share of the failures that happen on it; NaN where nothing fails or it is not told.</param>
public sealed record CardLeg(string Name, double Km, double PlannedKmPerHour, double KmPerHour, double Share);

/// <summary>What a constraint costs.</summary>
/// <param name="Kind">What is constrained.</param>
/// <param name="Remedy">The remedy not taken, if it is one.</param>
/// <param name="PayloadKg">The load carried, kg, if it is one; null for the planned load.</param>
/// <param name="Hours">The least travel time with it, h; null where no combination keeps the target then.</param>
/// <param name="Taken">The remedies that are taken then.</param>
public sealed record CardPrice(CardConstraint Kind, Remedy? Remedy, double? PayloadKg, double? Hours, ImmutableArray<Remedy> Taken);

/// <summary>What may constrain a card.</summary>
public enum CardConstraint
{
    /// <summary>A remedy is not taken.</summary>
    WithoutRemedy,

    /// <summary>Another load is carried.</summary>
    OtherLoad,

    /// <summary>No target is kept: every leg at the greatest speed tried.</summary>
    NoTarget,
}
