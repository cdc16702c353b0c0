using System.Collections.Immutable;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// Legs of a trip that are driven with one load, as a scenario of their own: each has the share 1, so its damage is that of one
/// km on it.
/// </summary>
/// <param name="Scenario">The scenario; its inputs keep their names, by which they are found among the factors of the whole.</param>
/// <param name="Legs">The legs' indices in the trip.</param>
internal sealed record TripLegScenario(Scenario Scenario, ImmutableArray<int> Legs)
{
    /// <summary>
    /// The scenarios of some legs of a trip; one a leg where the modes of failure are several, as their rates are those of a
    /// whole use.
    /// </summary>
    /// <param name="whole">The scenario with its trip's inputs among its own.</param>
    /// <param name="legs">The legs' indices in the trip.</param>
    public static ImmutableArray<TripLegScenario> Of(Scenario whole, IEnumerable<int> legs) =>
        new ModeSet(whole).Modes.Length > 1
            ? [.. legs.Select(leg => new TripLegScenario(Of(whole, LoadOf(whole, leg), [leg]), [leg]))]
            : [.. legs.GroupBy(leg => LoadOf(whole, leg), new SameLoad())
                .Select(g => new TripLegScenario(Of(whole, g.Key, [.. g]), [.. g]))];

    /// <summary>
    /// What the vehicle carries on a leg: what the leg states, else the payload of the usual use; null where neither is stated.
    /// </summary>
    public static Input? LoadOf(Scenario whole, int leg) => InputOf(whole, Quantities.Payload, leg) ?? whole.Find(Quantities.Payload);

    /// <summary>
    /// The input of a quantity on a leg of the trip: what the leg states, else that of the usual leg it is like; null where there
    /// is none.
    /// </summary>
    public static Input? InputOf(Scenario whole, Quantity quantity, int leg) =>
        whole.Find(quantity, whole.Legs.Length + leg)
        ?? (whole.Trip!.Legs[leg].Like is { } like ? whole.Find(quantity, like) : null);

    // Those that the leg states, else those of the usual leg it is like.
    private static IEnumerable<Input> EventsOf(Scenario whole, int leg)
    {
        Input[] own = [.. whole.Inputs.Where(i => i.Event is not null && i.Leg == whole.Legs.Length + leg)];
        return own.Length > 0 || whole.Trip!.Legs[leg].Like is not { } like ? own
            : whole.Inputs.Where(i => i.Event is not null && i.Leg == like);
    }

    // Those of the axle's model in their order; another model's as they stand.
    private static IEnumerable<Quantity> PerLeg(Scenario whole) => whole.Model is null
        ? Quantities.All.Where(q => q.IsPerLeg) : whole.Inputs.Select(i => i.Quantity).Where(q => q.IsPerLeg).Distinct();

    private static Scenario Of(Scenario whole, Input? load, ImmutableArray<int> legs)
    {
        IEnumerable<Input> vehicle = whole.Inputs.Where(i => i.Leg is null && i.Quantity != Quantities.Payload);
        IEnumerable<Input> loads = load is null ? [] : [load with { Leg = null }];
        IEnumerable<Input> roads =
            from place in Enumerable.Range(0, legs.Length)
            from quantity in PerLeg(whole)
            let input = InputOf(whole, quantity, legs[place])
            where input is not null
            select input with { Leg = place };
        IEnumerable<Input> events = Enumerable.Range(0, legs.Length)
            .SelectMany(place => EventsOf(whole, legs[place]).Select(i => i with { Leg = place }));
        return whole with
        {
            // A name with a dot is no usual leg's: none of their shares is taken for the trip leg's.
            Legs = [.. legs.Select(l => new Leg(Trip.Prefix + whole.Trip!.Legs[l].Name, whole.Trip.Legs[l].RoadClass, 1))],
            MixConcentration = null,
            Inputs = [.. vehicle, .. loads, .. roads, .. events],
            Correlations = [],
            Trip = null,
        };
    }

    /// <summary>Loads are the same where they are one input or one certain number.</summary>
    private sealed class SameLoad : IEqualityComparer<Input?>
    {
        public bool Equals(Input? x, Input? y) => KeyOf(x) == KeyOf(y);

        public int GetHashCode(Input? load) => KeyOf(load).GetHashCode();

        private static (string? Name, double Number) KeyOf(Input? load) => load?.Value switch
        {
            null => (null, 0),
            Value.Certain { Number: var number } => (null, number),
            _ => (load.Name, 0),
        };
    }
}
