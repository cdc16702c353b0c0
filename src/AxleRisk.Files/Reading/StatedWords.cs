using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>A distribution as a scenario states it, in one line, with its numbers as they stand in the file.</summary>
internal static class StatedWords
{
    /// <summary>
    /// <c>normal(mean 7.0, sd 0.30)</c>, <c>lognormal(5 % to 95 %: 35 to 62)</c>; null for a choice, whose states are told with their
    /// probabilities.
    /// </summary>
    /// <param name="table">The table of a distribution that was read without fault.</param>
    public static string? Of(TomlTable table)
    {
        if (table.Find("distribution")?.Node is not TomlText { Text: not "choice" } family)
        {
            return null;
        }

        return $"{family.Text}({string.Join(", ", table.Entries.Where(e => e.Key is not ("distribution" or "knowledge" or "nominal")).Select(Of))})";
    }

    private static string Of(TomlEntry entry) => entry.Node switch
    {
        TomlArray { Items: [TomlArray { Items: [TomlNumber p, TomlNumber x] }, TomlArray { Items: [TomlNumber q, TomlNumber y] }] } =>
            $"{Percent(p)} to {Percent(q)}: {x.Shown} to {y.Shown}",
        TomlText text => $"{entry.Key} {MessageText.OneLine(text.Text)}",
        var node => $"{entry.Key} {node.Shown}",
    };

    private static string Percent(TomlNumber probability) => $"{100 * (decimal)probability.Number:0.######} %";
}
