using System.Collections.Immutable;

namespace AxleRisk.Core.Scenarios;

/// <summary>
/// A trip that a vehicle of the scenario sets out on: its legs in the order they are driven, after some distance under the usual
/// use.
/// </summary>
public sealed record Trip
{
    /// <summary>What the names of a trip's inputs begin with: <c>trip.rocky.speed_km_per_h</c>.</summary>
    public const string Prefix = "trip.";

    /// <summary>The legs, in the order they are driven.</summary>
    public required ImmutableArray<TripLeg> Legs { get; init; }

    /// <summary>
    /// Every scalar of the trip. One of a leg has the index of the leg behind those of the usual legs: trip leg i of a scenario
    /// with n usual legs has n + i. What a leg has from the usual leg it is like is not among them.
    /// </summary>
    public required ImmutableArray<Input> Inputs { get; init; }

    /// <summary>Rank correlations of which at least one input is the trip's.</summary>
    public ImmutableArray<RankCorrelation> Correlations { get; init; } = [];

    /// <summary>The failure probability on the trip that is to be kept; null where none is stated.</summary>
    public double? TargetRisk { get; init; }

    /// <summary>What the crew's card may choose from; null where none is asked for.</summary>
    public TripCard? Card { get; init; }

    /// <summary>What could be done for this trip besides the scenario's remedies.</summary>
    public ImmutableArray<Remedy> Remedies { get; init; } = [];

    /// <summary>The scenario with the inputs and correlations of its trip among its own: what draws the trip's factors, too.</summary>
    public static Scenario Whole(Scenario scenario) => scenario.Trip is { } trip
        ? scenario with { Inputs = [.. scenario.Inputs, .. trip.Inputs], Correlations = [.. scenario.Correlations, .. trip.Correlations] }
        : scenario;

    /// <summary>Whether an input's name is of a trip.</summary>
    public static bool IsNameOf(string input) => input.StartsWith(Prefix, StringComparison.Ordinal);
}

/// <summary>One leg of a trip.</summary>
/// <param name="Name">A short name, unique in the trip.</param>
/// <param name="RoadClass">The ISO 8608 class letter A to H; null where the roughness is stated outright.</param>
/// <param name="Like">The index of the usual leg that it is like, whose values it has where it states none; null where there is
/// none.</param>
public sealed record TripLeg(string Name, char? RoadClass, int? Like = null);

/// <summary>The scalars that only a trip has.</summary>
public static class TripQuantities
{
    /// <summary>The section whose quantities each leg of the trip has for itself.</summary>
    public const string LegSection = "trip.legs";

    /// <summary>Every scalar that only a trip has.</summary>
    public static ImmutableArray<Quantity> All => [AlreadyDriven, Distance];

    /// <summary>Distance driven before the trip.</summary>
    public static Quantity AlreadyDriven { get; } = new(
        "trip", "already_driven_km", "distance before the trip", "km", Domain.NonNegative,
            "distance driven under the usual use before the trip", new Value.Certain(0), "a new axle unless stated");

    /// <summary>Distance of a leg.</summary>
    public static Quantity Distance { get; } = new(LegSection, "km", "distance", "km", Domain.NonNegative, "distance of the leg")
    { LabelOfLeg = "distance of {0}" };
}
