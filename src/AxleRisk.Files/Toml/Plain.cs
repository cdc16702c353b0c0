namespace AxleRisk.Files.Toml;

/// <summary>Makes foreign text fit to stand in a message on a terminal.</summary>
internal static class Plain
{
    private const int Longest = 200;

    /// <summary>The text on one line, without control characters, cut where it is long.</summary>
    public static string OneLine(string text, int longest = Longest)
    {
        string cut = text.Length > longest ? text[..longest] + "..." : text;
        return string.Concat(cut.Select(c => char.IsControl(c) || char.IsSurrogate(c) ? '?' : c));
    }

    /// <summary>The text in quotes, as <see cref="OneLine"/> and shorter.</summary>
    public static string Quote(string text) => $"\"{OneLine(text, 40)}\"";

    /// <summary><c>a, b and c</c>, or with another last word than <c>and</c>.</summary>
    public static string List(IReadOnlyList<string> names, string last = "and") => names.Count switch
    {
        0 => "nothing",
        1 => names[0],
        _ => $"{string.Join(", ", names.Take(names.Count - 1))} {last} {names[^1]}",
    };
}
