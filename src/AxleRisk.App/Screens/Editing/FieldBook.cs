using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Editing;

/// <summary>The fields that a kind of value has, empty, and what each is.</summary>
internal static class FieldBook
{
    public const string Number = "number";

    private static readonly string[] Knowledge = ["varies", "unknown"];
    private static readonly string[] Quantiles = ["p1", "x1", "p2", "x2"];

    /// <summary>The kinds to choose from: a number, then the families of distributions.</summary>
    public static IReadOnlyList<string> Kinds { get; } = [Number, .. StatedForms.Families];

    /// <summary>The fields of a number.</summary>
    public static IReadOnlyList<ValueField> OfNumber { get; } = [new("value", "", false, "the number")];

    /// <summary>The fields of a way to state a distribution; two quantiles are four fields.</summary>
    public static IReadOnlyList<ValueField> Of(StatedForm form) =>
    [
        .. form.Required.SelectMany(Fields),
        .. form.Optional.Select(name => new ValueField(name, "", true, Hint(name))),
        .. form.CanBeCut ? new ValueField[] { new("min", "", true, Hint("min")), new("max", "", true, Hint("max")) } : [],
        new("nominal", "", true, Hint("nominal")),
        new("knowledge", "varies", true, Hint("knowledge")) { Words = Knowledge },
    ];

    /// <summary>A number as a field shows it: five figures, enough for any input.</summary>
    public static string Show(double x) => !double.IsFinite(x) ? "" : x != 0 && (Math.Abs(x) >= 1e7 || Math.Abs(x) < 1e-4)
        ? x.ToString("G5") : decimal.Parse(x.ToString("G5"), System.Globalization.NumberStyles.Float).ToString("0.##########");

    private static IEnumerable<ValueField> Fields(string name) => name == "quantiles"
        ? Quantiles.Select(n => new ValueField(n, "", false, Hint(n)))
        : [new ValueField(name, "", false, Hint(name))];

    private static string Hint(string name) => name switch
    {
        "p1" => "share at or below the next value",
        "x1" or "x2" => "the value for this share",
        "p2" => "a greater share",
        "values" => "the values, with blanks or commas between",
        "weights" => "their weights; they add up to 1",
        "file" => "a CSV file beside the scenario",
        "column" => "the header of its column",
        "nominal" => "value of the base case; empty: the median",
        "knowledge" => "varies between vehicles, or one value nobody knows",
        _ => DistributionFormat.MeaningOf(name),
    };
}
