using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>
/// The scenario file, described once: every table with its keys. The reader knows no other key, and the schema, the reference's
/// tables and forms are made of this. A further table is described here and named in <see cref="Top"/>.
/// </summary>
public static class ScenarioFormat
{
    private static string[] TitleBlockMeanings =>
        ["its date", "who made it", "who examined the vehicle", "who has looked it over", "which state of it this is"];

    /// <summary>The vehicle.</summary>
    public static TableFormat Vehicle { get; } = new(
        "vehicle", "The vehicle; all values are of one rear wheel unless the meaning says otherwise.", FormatParts.Of("vehicle"));

    /// <summary>The checked section of the axle.</summary>
    public static TableFormat Axle { get; } = new(
        "axle", "The checked section of the axle.",
        [
            AxleFormat.Shape,
            .. FormatParts.Of("axle").Select(AxleFormat.OfShape),
        ]);

    /// <summary>The wheel bearing.</summary>
    public static TableFormat Bearing { get; } = new(
        Quantities.BearingSection, "The wheel bearing; without this table its life is no mode of failure.",
        [
            new("kind", "kind", "", FormatWords.Of(FormatWords.Bearings), "kind of the bearing") { IsRequired = true },
            .. FormatParts.Of(Quantities.BearingSection),
        ]);

    /// <summary>The modes of failure to leave out.</summary>
    public static TableFormat Modes { get; } = new(
        "modes", "Which modes of failure are left out.",
        new KeyFormat("off", "modes left out", "", new KeyKind.SomeWords(FormatWords.Modes),
            "modes of failure to leave out: their inputs are checked and then ignored, as if they were not stated")
        { IsRequired = true });

    /// <summary>The fatigue model.</summary>
    public static TableFormat Fatigue { get; } = new(
        "fatigue", "The model of fatigue.",
        [
            new("counting", "counting of cycles", "", FormatWords.Of(FormatWords.Countings),
                "how stress cycles are counted in the frequency domain")
            { Otherwise = "`\"dirlik\"`" },
            .. FormatParts.Of("fatigue"),
        ]);

    /// <summary>A rank correlation.</summary>
    public static TableFormat Correlation { get; } = new(
        "correlations", "A rank correlation between two inputs.",
        new("between", "inputs", "", new KeyKind.InputPair(), "the pair; each pair once") { IsRequired = true },
        new("spearman", "rank correlation", "", new KeyKind.Number(new Domain(-1, 1, LowIncluded: false, HighIncluded: false)),
            "Spearman's rank correlation")
        { IsRequired = true });

    /// <summary>The top of the file.</summary>
    public static TableFormat Top { get; } = new(
        "", "A scenario: a vehicle, the checked section of its axle, the weld detail, the use and the distance it must last.",
        [
            new("title", "title", "", new KeyKind.Line(200), "what is printed at the head of every result") { IsRequired = true },
            new("about", "about", "", new KeyKind.Text(), "what the scenario is about") { Otherwise = "empty" },
            .. TitleBlock.Keys.Zip(TitleBlockMeanings, (key, meaning) =>
                new KeyFormat(key, key, "", new KeyKind.Line(200), $"title block of the report: {meaning}") { Otherwise = "empty" }),
            new("required_km", "required distance", "km", new KeyKind.Number(Domain.Positive), "the distance the axle must last")
            { IsRequired = true },
            new("currency", "currency", "", new KeyKind.Line(8, "EUR"), "what costs are stated in; printed with every cost"),
            FormatParts.OneOf(Vehicle) with { IsRequired = true },
            FormatParts.OneOf(Axle) with { IsRequired = true },
            FormatParts.OneOf(Bearing),
            FormatParts.OneOf(Modes),
            FormatParts.OneOf(DetailFormat.Detail) with { IsRequired = true },
            FormatParts.Many(SectionFormat.Section, SectionFormat.Most, "further sections"),
            FormatParts.OneOf(UseFormat.Use) with { IsRequired = true },
            FormatParts.OneOf(Fatigue),
            FormatParts.Many(Correlation, 64, "correlations"),
            FormatParts.OneOf(EvidenceFormat.Evidence),
            FormatParts.Many(EvidenceFormat.Explanation, Evidence.MostExplanations, "explanations"),
            FormatParts.OneOf(FieldFormat.Field),
            FormatParts.OneOf(FieldFormat.Gauges),
            FormatParts.OneOf(LearnedFormat.Learned),
            FormatParts.Many(RemedyFormat.Remedy, RemedyFormat.Most, "remedies"),
            FormatParts.Many(HistoryFormat.Stretch, HistoryFormat.Most, "stretches"),
            FormatParts.OneOf(TripFormat.Trip),
            FormatParts.OneOf(FleetFormat.Fleet),
            FormatParts.OneOf(DecisionFormat.Decision),
            FormatParts.Many(DecisionFormat.Measurement, 32, "measurements"),
            FormatParts.OneOf(CrackFormat.Crack),
            FormatParts.Many(CrackFormat.Method, CrackFormat.MostMethods, "inspections"),
            FormatParts.OneOf(CrackFormat.Plan),
        ]);

    /// <summary>All tables of the file, those in others behind them.</summary>
    public static IEnumerable<TableFormat> All => Inside(Top);

    private static IEnumerable<TableFormat> Inside(TableFormat table) => table.Keys.SelectMany(k => k.Kind switch
    {
        KeyKind.Table one => Inside(one.Of),
        KeyKind.Tables many => Inside(many.Of),
        _ => [],
    }).Prepend(table);
}
