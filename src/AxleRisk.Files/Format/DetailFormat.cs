using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>The tables of the weld detail.</summary>
public static class DetailFormat
{
    private const string Level = "stated_as";

    /// <summary>The word for a curve that half of all specimens survive, and for one that most of them do.</summary>
    public const string Mean = "mean", Design = "design";

    private static readonly KeyOwner Catalogues = new("catalogue", SnCatalogue.Catalogues);

    /// <summary>An S-N curve of the user's own.</summary>
    public static TableFormat Curve { get; } = new(
        "detail.curve", "An S-N curve of your own, in force with `catalogue = \"own\"`.",
        new("slopes", "slopes", "", Few(new Domain(0, 30, LowIncluded: false), 1, OwnCurve.MostLines, "slopes m, each above 0 and up to 30"),
            "the slopes of its lines, from the greatest ranges down")
        { Needs = "log10_a", Start = "3 5" },
        new("log10_a", "log10 a", "", Few(new Domain(0, 120, LowIncluded: false), 1, OwnCurve.MostLines, "log10 a, each above 0 and up to 120"),
            "the intercepts of the lines, S in MPa: log10 N = log10 a - m log10 S")
        { Needs = "slopes", Start = "12.01 15.35" },
        new("cycles", "cycles", "", Few(new Domain(1, 1e15, true), 2, OwnCurve.MostLines + 1, "numbers of cycles from 1 to 1e15, rising"),
            "in place of `slopes` and `log10_a`: the cycles of points that straight lines join; the outer lines go on beyond them")
        { Needs = "range_mpa" },
        new("range_mpa", "stress range", "MPa", Few(new Domain(0, 1e5, LowIncluded: false), 2, OwnCurve.MostLines + 1, "stress ranges up to 100000 MPa, falling"),
            "the stress ranges of these points")
        { Needs = "cycles" },
        new("cut_off_mpa", "cut-off", "MPa", new KeyKind.Number(Domain.NonNegative), "the range below which a cycle does no damage")
        { Otherwise = "none: the last line goes on" },
        new(Level, "stated as", "", new KeyKind.Word([Mean, Design]), "whether half of all specimens survive it, or it is a curve to design by")
        { IsRequired = true, Start = Mean },
        new("sd_log10_n", "standard deviation of log10 N", "", new KeyKind.Number(new Domain(0, 2, LowIncluded: false)),
            "standard deviation of log10 N about the mean curve: the S-N scatter where `[fatigue]` states none")
        { IsRequired = true, Start = "0.2" },
        new("design_below_mean", "design below mean", "", new KeyKind.Number(new Domain(0, 5, true)),
            "how many standard deviations the design curve lies below the mean")
        { Otherwise = "2", BelongsTo = new(Level, Design) },
        new("thickness_reference_mm", "reference thickness", "mm", new KeyKind.Number(Domain.Positive),
            "the thickness up to which `thickness_exponent` corrects nothing")
        { Otherwise = "25" },
        new("source", "source", "", new KeyKind.Line(200, "own tests of 2024, report 12"), "where the curve comes from; printed with every answer")
        { IsRequired = true, Start = "where it comes from" })
    {
        Choices = [new(true, "slopes", "cycles")],
    };

    /// <summary>The weld detail.</summary>
    public static TableFormat Detail { get; } = new(
        "detail", "The weld detail.",
        new("catalogue", "catalogue", "", new KeyKind.Word([.. SnCatalogue.Catalogues, Core.Scenarios.Detail.OwnCatalogue]),
            "the family of S-N curves; `\"own\"` for that of `[detail.curve]`")
        { IsRequired = true },
        new("category", "weld category", "", new KeyKind.Category(), "the weld detail") { IsRequired = true, BelongsTo = Catalogues },
        new("environment", "environment", "", new KeyKind.WordOrChoice(SnCatalogue.Environments(SnCatalogue.Catalogues[0])),
            "what the weld lives in; catalogues other than DNV-RP-C203 tell of air alone")
        { Otherwise = "`\"air\"`", BelongsTo = Catalogues },
        new("thickness_exponent", "thickness exponent", "", new KeyKind.Number(Domain.Fraction), "exponent of the thickness correction")
        { Otherwise = "that of the catalogue; 0 for a curve of your own" },
        FormatParts.OneOf(Curve) with { Key = "curve", Label = "S-N curve of your own" });

    /// <summary>A choice of several weld categories or environments.</summary>
    public static TableFormat WordChoice { get; } = new(
        "", "Several words with weights, the better ones first.",
        new("distribution", "distribution", "", new KeyKind.Word(["choice"]), "always a choice") { IsRequired = true },
        DistributionFormat.Common.Find("knowledge")!,
        new("values", "words", "", new KeyKind.Values(OfWords: true), "categories or environments of the catalogue") { IsRequired = true },
        DistributionFormat.Of("choice").Find("weights")! with { IsRequired = true });

    private static KeyKind.Numbers Few(Domain domain, int least, int most, string what) =>
        new(domain, least, most, $"{least} to {most} {what}");
}
