using System.Collections.Immutable;

namespace AxleRisk.Core.Scenarios;

/// <summary>What was found after a failure, or after none, and how the author would explain it.</summary>
public sealed record Evidence
{
    /// <summary>The most explanations there can be: all their combinations are weighed.</summary>
    public const int MostExplanations = 8;

    /// <summary>No evidence.</summary>
    public static Evidence None { get; } = new();

    /// <summary>What is known of the life of this axle; null where nothing is.</summary>
    public LifeEvidence? Life { get; init; }

    /// <summary>
    /// The name of the section that was found cracked, and no other, <see cref="CheckedSection.First"/> for the first; null where it is
    /// not told. Only of an axle that has failed.
    /// </summary>
    public string? CrackedAt { get; init; }

    /// <summary>
    /// Where it comes from as a whole, in the author's words; only printed, and only of what has no source of its own. May be empty.
    /// </summary>
    public string Source { get; init; } = "";

    /// <summary>Factors measured on this vehicle.</summary>
    public ImmutableArray<Measurement> Measured { get; init; } = [];

    /// <summary>Choices whose state is known of this vehicle.</summary>
    public ImmutableArray<KnownState> Known { get; init; } = [];

    /// <summary>Looks for the crack that were done on this vehicle, by rising distance; it was whole at each.</summary>
    public ImmutableArray<CrackLook> Looks { get; init; } = [];

    /// <summary>What is known of its life with the looks: where nothing else is said it has reached the last of them.</summary>
    public LifeEvidence? LifeWithLooks => Life ?? (Looks is [.., var last] ? new LifeEvidence.Survived(last.Km) : null);

    /// <summary>The named explanations to be weighed against each other; evidence itself they are not.</summary>
    public ImmutableArray<Explanation> Explanations { get; init; } = [];

    /// <summary>
    /// The distance of which is asked whether the axle would have passed it without an explanation, km; null for the distance that
    /// it must last.
    /// </summary>
    public double? WouldHavePassedKm { get; init; }

    /// <summary>Whether it is of a vehicle that is whole; a trip and plans of inspection then go on from there.</summary>
    public bool IsOfWhole => !IsEmpty && Life?.FailedByKm is null;

    /// <summary>Whether nothing was found.</summary>
    public bool IsEmpty => Life is null && Measured.IsEmpty && Known.IsEmpty && Looks.IsEmpty;
}

/// <summary>What is known of the life of one axle.</summary>
public abstract record LifeEvidence
{
    /// <summary>The distances above 0 that it speaks of, km, rising.</summary>
    public ImmutableArray<double> DistancesKm => this switch
    {
        FailedAt(var km) => [km],
        FailedBetween(> 0 and var from, var to) => [from, to],
        FailedBetween(_, var to) => [to],
        Survived(var km) => [km],
        _ => [],
    };

    /// <summary>The distance by which it had failed, km; null where it has not.</summary>
    public double? FailedByKm => this switch
    {
        FailedAt(var km) => km,
        FailedBetween(_, var km) => km,
        _ => null,
    };

    /// <summary>The last distance at which it is known to have been whole, km; 0 for none.</summary>
    public double WholeKm => this switch
    {
        FailedAt(var km) => km,
        FailedBetween(var km, _) => km,
        Survived(var km) => km,
        _ => 0,
    };

    /// <summary>It failed at a distance.</summary>
    /// <param name="Km">The distance, km, above 0.</param>
    public sealed record FailedAt(double Km) : LifeEvidence;

    /// <summary>It failed between two distances.</summary>
    /// <param name="FromKm">The last distance at which it was whole, km, not below 0.</param>
    /// <param name="ToKm">The distance at which it was found broken, km, above the first.</param>
    public sealed record FailedBetween(double FromKm, double ToKm) : LifeEvidence;

    /// <summary>It has not failed.</summary>
    /// <param name="Km">The distance it has reached, km, above 0.</param>
    public sealed record Survived(double Km) : LifeEvidence;
}

/// <summary>A factor measured on this vehicle: the true value plus a normal error gives the value read.</summary>
/// <param name="Factor">The name of a continuous factor.</param>
/// <param name="Value">The value read, in the factor's unit.</param>
/// <param name="StandardDeviation">The standard deviation of the error, in the same unit, above 0.</param>
/// <param name="Source">Where it comes from, in the author's words; only printed. Empty where it is not stated.</param>
public sealed record Measurement(string Factor, double Value, double StandardDeviation, string Source = "")
{
    /// <summary>ln of how likely the reading is of a true value: a normal error, up to a constant.</summary>
    internal double LogLikelihood(double trueValue)
    {
        double error = (Value - trueValue) / StandardDeviation;
        return -(0.5 * error * error);
    }
}

/// <summary>A choice whose state is known of this vehicle.</summary>
/// <param name="Factor">The name of a factor that is a choice.</param>
/// <param name="Value">Its value: the number chosen, or the index of the category.</param>
/// <param name="Source">Where it comes from, in the author's words; only printed. Empty where it is not stated.</param>
public sealed record KnownState(string Factor, double Value, string Source = "");

/// <summary>A named explanation: the event that all its conditions hold.</summary>
/// <param name="Name">Its name, unique in the scenario.</param>
/// <param name="Prior">How likely it is before the evidence, above 0 and below 1; null for what the scenario's distributions give.</param>
/// <param name="When">Its conditions, at least one.</param>
public sealed record Explanation(string Name, double? Prior, ImmutableArray<Condition> When)
{
    /// <summary>
    /// What the inputs it speaks of would have been without it, each a condition's input of this scenario; empty where that is not
    /// stated.
    /// </summary>
    public ImmutableArray<Change> Instead { get; init; } = [];

    /// <summary>What known states say of it for certain: that it holds, that it does not, or null where they leave it open.</summary>
    public bool? SettledBy(ImmutableArray<KnownState> known)
    {
        bool? Of(Condition condition) => known.FirstOrDefault(k => k.Factor == condition.Column) is { } state
            ? condition.Holds(state.Value) : null;
        return When.Any(c => Of(c) == false) ? false : When.All(c => Of(c) == true) ? true : null;
    }
}

/// <summary>A condition on one column of the sample.</summary>
/// <param name="Column">The column's name: that of a factor, or of a leg's share in the road mix.</param>
/// <param name="Above">The value must lie above this; negative infinity where it need not.</param>
/// <param name="Below">The value must lie below this; infinity where it need not.</param>
/// <param name="States">The value must be one of these, if there are any: numbers of a choice or indices of categories.</param>
public sealed record Condition(string Column, double Above, double Below, ImmutableArray<double> States)
{
    /// <summary>Whether a value meets the condition.</summary>
    public bool Holds(double value) => States.IsEmpty ? value > Above && value < Below : States.Contains(value);
}
