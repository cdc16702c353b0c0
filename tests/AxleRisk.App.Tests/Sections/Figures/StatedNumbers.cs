using System.Collections.Immutable;

namespace AxleRisk.App.Tests.Sections.Figures;

/// <summary>The numbers that a scenario's file states, line by line.</summary>
internal sealed class StatedNumbers
{
    private readonly List<(string Table, string Key, ImmutableArray<double> Numbers)> lines = [];

    /// <param name="text">The text of the file.</param>
    public StatedNumbers(string text)
    {
        string table = "";
        foreach (string line in text.Split('\n').Select(l => l.Split('#')[0].Trim()))
        {
            if (line.StartsWith('['))
            {
                table = line.Trim('[', ']');
            }
            else if (line.StartsWith("name = ", StringComparison.Ordinal))
            {
                table = line["name = ".Length..].Trim('"');
            }
            else if (line.Contains('=', StringComparison.Ordinal))
            {
                string[] parts = line.Split('=', 2);
                lines.Add((table, parts[0].Trim(), [.. PrintedFigure.In(parts[1]).Select(f => f.Value)]));
            }
        }
    }

    /// <summary>All of them.</summary>
    public IEnumerable<double> All => lines.SelectMany(l => l.Numbers);

    /// <summary>The names that the file gives to legs, remedies and explanations.</summary>
    public IEnumerable<string> Names => lines.Select(l => l.Table).Distinct();

    /// <summary>Those of what has one of these names or keys.</summary>
    public IEnumerable<double> Of(IReadOnlyCollection<string> keys) =>
        lines.Where(l => keys.Any(k => k == l.Table || k.Split('.')[^1] == l.Key)).SelectMany(l => l.Numbers);

    /// <summary>Those of the evidence.</summary>
    public IEnumerable<double> OfEvidence => lines.Where(l => l.Table.StartsWith("evidence", StringComparison.Ordinal)).SelectMany(l => l.Numbers);

    /// <summary>Those of what a text names; of a name of one word in quotes, what would be instead.</summary>
    public IEnumerable<double> OfNames(string text) => lines
        .Where(l => l.Table.Contains(' ') ? text.Contains(l.Table, StringComparison.Ordinal)
            : l.Key == "instead" && text.Contains($"\"{l.Table}\"", StringComparison.Ordinal))
        .SelectMany(l => l.Numbers);
}
