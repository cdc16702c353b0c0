using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>The tables of the trip.</summary>
public static class TripFormat
{
    /// <summary>A leg of the trip: like a usual leg, or with a road of its own.</summary>
    public static TableFormat Leg { get; } = new(
        TripQuantities.LegSection, "One leg of the trip, in the order they are driven.",
        [
            new("name", "name", "", new KeyKind.PlainName(), "the name of the leg, unique in the trip")
            { IsRequired = true, Start = "leg" },
            KeyFormat.Of(TripQuantities.Distance) with { Start = "100" },
            KeyFormat.Of(Quantities.Payload) with { Meaning = "payload of the whole vehicle on this leg", Otherwise = "`vehicle.payload_kg`" },
            new("like", "like", "", new KeyKind.Text("the name of a usual leg", IsUsualLeg: true), "the leg is a road of that kind")
            { Otherwise = "the leg has a road of its own" },
            .. UseFormat.Road.Select(k => k.Quantity == Quantities.Speed ? k with { Unless = "like" } : k),
            FormatParts.Many(UseFormat.EventsOf(TripQuantities.LegSection + ".events"), UseFormat.MostEvents, "events"),
        ])
    {
        Choices =
        [
            new(true, "like", "road_class", Quantities.Roughness.Key),
            new(false, Quantities.Roughness.Key, Quantities.RoughnessWithinClass.Key),
        ],
    };

    /// <summary>What the crew's card may choose from.</summary>
    public static TableFormat Card { get; } = new(
        "trip.card", "What the crew's card may choose from; asks for one. It needs a target.",
        new("speed_step_km_per_h", "step of speeds", "km/h", new KeyKind.Number(Domain.Positive), "speeds are multiples of this")
        { Otherwise = "5" },
        new("fastest_km_per_h", "greatest speed", "km/h", new KeyKind.Number(Domain.Positive), "no leg is driven faster, even where the plan is")
        { Otherwise = "the planned speed of each leg, rounded down to the step" },
        new("payloads_kg", "other loads", "kg",
            new KeyKind.Numbers(Domain.NonNegative, 1, 6, "up to six loads in brackets"),
            "loads that could be carried on every leg in place of the planned ones"),
        new("notes", "notes", "", new KeyKind.Line(300), "what else the crew should know, such as tyre pressures; only printed"));

    /// <summary>The trip.</summary>
    public static TableFormat Trip { get; } = new(
        "trip", "A trip that a vehicle sets out on.",
        KeyFormat.Of(TripQuantities.AlreadyDriven),
        new("target_risk", "target risk", "", new KeyKind.Number(new Domain(0, 1, LowIncluded: false)),
            "the failure probability on the trip that is to be kept"),
        new("legs", "legs of the trip", "", new KeyKind.Tables(Leg, 1, UseFormat.MostLegs, "legs of the trip"), Leg.Meaning)
        { IsRequired = true },
        new("card", "crew's card", "", new KeyKind.Table(Card), Card.Meaning),
        FormatParts.Many(RemedyFormat.Remedy with { Path = "trip.remedies" }, RemedyFormat.Most, "remedies"));
}
