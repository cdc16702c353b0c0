using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>The tables of the remedies.</summary>
public static class RemedyFormat
{
    /// <summary>The most remedies: each pair of them is evaluated.</summary>
    public const int Most = 12;

    /// <summary>A remedy of the usual use.</summary>
    public static TableFormat Remedy { get; } = new(
        "remedies", "What could be done about it: a named set of changes.",
        new("name", "name", "", new KeyKind.Line(40), "the name of the remedy, unique in the file")
        { IsRequired = true, Start = "remedy" },
        new("cost", "cost", "", new KeyKind.Number(Domain.Any),
            "what it costs, a vehicle, in your own unit or in `currency`; added up for pairs, and what `decide` reckons with"),
        new("change", "changes", "", new KeyKind.Changes(), "what it changes, an inline table or `[remedies.change]`")
        { IsRequired = true });

    /// <summary>A change of an input by a factor.</summary>
    public static TableFormat Times { get; } = new(
        "", "A multiple of the value or distribution in force.",
        new KeyFormat("times", "factor", "", new KeyKind.Number(Domain.Positive), "the factor") { IsRequired = true });
}
