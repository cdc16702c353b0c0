using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>The tables of what was found on one vehicle, and of the explanations proposed.</summary>
public static class EvidenceFormat
{
    private const int Most = 64;

    private static readonly KeyFormat Factor = new("factor", "factor", "", new KeyKind.InputName(), "what was measured or is known")
    { IsRequired = true };

    private static readonly KeyFormat Source = new(
        "source", "source", "", new KeyKind.Line(200), "where it comes from, such as \"examination of 4 May, photographs 1 to 6\"; only printed");

    /// <summary>A factor that was measured.</summary>
    public static TableFormat Measured { get; } = new(
        "evidence.measured", "A factor that was measured.",
        Factor,
        new("value", "value", "", new KeyKind.Number(Domain.Any), "the value read; one that the input can have") { IsRequired = true },
        new("sd", "accuracy", "", new KeyKind.Number(Domain.Positive), "accuracy: the standard deviation of the error of measurement")
        { IsRequired = true },
        Source);

    /// <summary>A choice whose state is known.</summary>
    public static TableFormat Known { get; } = new(
        "evidence.known", "A choice whose state is known.",
        Factor,
        new("state", "state", "", new KeyKind.State(), "the state") { IsRequired = true },
        Source);

    /// <summary>A look for the crack that was done.</summary>
    public static TableFormat Look { get; } = new(
        "evidence.looks", "A look for the crack that was done on this vehicle, whole then, and what was seen.",
        new("method", "method", "", new KeyKind.Line(40, "dye penetrant"), "the way of looking: the name of one of the `[[inspections]]`")
        { IsRequired = true },
        new("at_km", "looked at", "km", new KeyKind.Number(Domain.Positive), "the distance at which it was done, not above that of a failure")
        { IsRequired = true, Start = "40000" },
        new("found", "found", "", FormatWords.Of(FormatWords.Sightings), "what was found") { Otherwise = "`\"nothing\"`" },
        new("depth_mm", "crack depth", "mm", new KeyKind.Number(Domain.Positive), "the depth that was measured, not above the wall")
        { Needs = "sd_mm", BelongsTo = new("found", "crack") },
        new("sd_mm", "accuracy", "mm", new KeyKind.Number(Domain.Positive), "the standard deviation of the error of that depth")
        { Needs = "depth_mm", BelongsTo = new("found", "crack") });

    /// <summary>What was found on one vehicle.</summary>
    public static TableFormat Evidence { get; } = new(
        "evidence", "What was found on one vehicle.",
        new("failed_at_km", "failed at", "km", new KeyKind.Number(Domain.Positive), "the axle failed at this distance"),
        new("failed_between_km", "failed between", "km",
            new KeyKind.Numbers(Domain.NonNegative, 2, 2, "two distances, the second above the first"),
            "it was whole at the first and broken at the second"),
        new("survived_km", "survived", "km", new KeyKind.Number(Domain.Positive), "it has reached this distance unbroken"),
        new("cracked_at", "cracked at", "",
            new KeyKind.Text($"`\"{CheckedSection.First}\"` for the first checked section, or the name of one under `[[{CheckedSection.Table}]]`"),
            "the section that was found cracked, and no other: for an axle that has failed")
        { Otherwise = "any of them" },
        new("would_have_passed_km", "but for it, passed", "km", new KeyKind.Number(Domain.Positive),
            "the distance that the axle might have passed without an explanation, beyond that of the failure: for those with `instead`")
        { Otherwise = "`required_km`" },
        Source,
        FormatParts.Many(Measured, Most, "measurements"),
        FormatParts.Many(Known, Most, "known states"),
        FormatParts.Many(Look, 16, "looks for the crack"))
    {
        Choices = [new(false, "failed_at_km", "failed_between_km", "survived_km")],
    };

    /// <summary>A named explanation.</summary>
    public static TableFormat Explanation { get; } = new(
        "explanations", "A named explanation to be weighed against the others.",
        new("name", "name", "", new KeyKind.Line(60), "its name") { IsRequired = true, Start = "explanation" },
        new("prior", "prior", "", new KeyKind.Number(Domain.OpenFraction), "how likely it is before the evidence")
        { Otherwise = "what the distributions give" },
        new("when", "conditions", "", new KeyKind.Conditions(), "what must hold, all of it") { IsRequired = true },
        new("instead", "without it", "", new KeyKind.Changes(),
            "what inputs named under `when` would have been without it: a value, a distribution to draw it from, a factor on what it was, a category; asks what would have become of this axle")
        { Otherwise = "not asked" });

    /// <summary>A range of an input.</summary>
    public static TableFormat Range { get; } = new(
        "", "A range, with one end or both.",
        new("above", "above", "", new KeyKind.Number(Domain.Any), "the lower end"),
        new("below", "below", "", new KeyKind.Number(Domain.Any), "the upper end, above the lower"));
}
