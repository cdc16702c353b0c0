using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>The tables of the use.</summary>
public static class UseFormat
{
    /// <summary>The most legs of use, and the most of a trip.</summary>
    public const int MostLegs = 64;

    private static readonly Domain Share = new(0, 1, LowIncluded: false);

    /// <summary>What the road of a leg is stated with, speed included.</summary>
    public static ImmutableArray<KeyFormat> Road { get; } =
    [
        new("road_class", "road class", "", FormatWords.Of(FormatWords.RoadClasses), "roughness class of ISO 8608, A the smoothest")
        { Otherwise = $"in place of `{Quantities.Roughness.Key}`" },
        .. FormatParts.Of(Quantities.LegSection).Select(k => k.Quantity == Quantities.Roughness
            ? k with { IsRequired = false, Otherwise = "in place of `road_class`" } : k),
    ];

    /// <summary>The most events of a leg.</summary>
    public const int MostEvents = 16;

    /// <summary>An event on a leg of use.</summary>
    public static TableFormat Event { get; } = EventsOf(Quantities.EventSection);

    /// <summary>An event on a leg of a list.</summary>
    internal static TableFormat EventsOf(string path) => new(
        path, "What comes now and then on the leg and is no noise: pot-holes, kerbs, ramps, corners, braking; each a cycle of its own.",
        [
            new("name", "name", "", new KeyKind.PlainName(), "what it is, unique on the leg") { IsRequired = true, Start = "pothole" },
            .. FormatParts.Of(Quantities.EventSection).Select(k => k.Quantity == Quantities.EventsPerKm ? k with { Start = "1" }
                : k.Quantity == Quantities.EventWheelLoad
                    ? k with { IsRequired = false, Start = "2", Otherwise = "in place of `moment_knm`" }
                    : k with { IsRequired = false, Otherwise = "in place of `wheel_load_range`" }),
        ])
    {
        Choices = [new(true, Quantities.EventWheelLoad.Key, Quantities.EventMoment.Key)],
    };

    /// <summary>A leg of use.</summary>
    public static TableFormat Leg { get; } = new(
        Quantities.LegSection, "One kind of road of the use.",
        [
            new("name", "name", "", new KeyKind.PlainName(), "the name of the leg, unique in the file")
            { IsRequired = true, Start = "leg" },
            new("share", "share", "", new KeyKind.Number(Share), "its share of the distance; all shares add up to 1 within 0.000001")
            { IsRequired = true, Start = "0.1", SumsToOne = true },
            .. Road.Select(k => k.Quantity == Quantities.CorrugationWavelength || k.Quantity == Quantities.CorrugationRms
                ? k with { Needs = Quantities.CorrugatedShare.Key }
                : k.Key == "road_class" ? k with { Start = "C" }
                : k.Quantity == Quantities.Speed ? k with { Start = "50" } : k),
            FormatParts.Many(Event, MostEvents, "events"),
        ])
    {
        Choices =
        [
            new(true, "road_class", Quantities.Roughness.Key), new(false, Quantities.Roughness.Key, Quantities.RoughnessWithinClass.Key),
        ],
    };

    /// <summary>The use.</summary>
    public static TableFormat Use { get; } = new(
        "use", "How the vehicle is used.",
        [
            .. FormatParts.Of("use"),
            new("mix_concentration", "certainty of the road mix", "", new KeyKind.Number(Domain.Positive),
                "Dirichlet concentration of the road mix: the larger, the surer are the stated shares")
            { Otherwise = "the shares are certain" },
            new("mix_knowledge", "knowledge of the road mix", "", FormatWords.Of(FormatWords.KnowledgeKinds),
                "whether an uncertain mix differs between vehicles or is merely not known")
            { Otherwise = "`\"varies\"`", Needs = "mix_concentration" },
            new("legs", "legs of use", "", new KeyKind.Tables(Leg, 1, MostLegs, "legs of use"), "the kinds of road of the use")
            { IsRequired = true },
        ]);
}
