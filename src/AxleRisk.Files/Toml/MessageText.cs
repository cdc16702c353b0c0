namespace AxleRisk.Files.Toml;

/// <summary>Makes foreign text fit to stand in a message on a terminal.</summary>
internal static class MessageText
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

    /// <summary>
    /// Why a text is no line of up to <paramref name="longest"/> characters, as the end of a sentence; null where it is one.
    /// </summary>
    public static string? LineFault(string text, int longest) =>
        string.IsNullOrWhiteSpace(text) ? "it is empty"
        : text.FirstOrDefault(char.IsControl) is var control && text.Any(char.IsControl)
            ? control is '\n' or '\r' ? "it has a line break" : $"it has a control character (U+{(int)control:X4})"
        : text.Length > longest ? $"it has {text.Length}"
        : null;

    /// <summary><c>a, b and c</c>, or with another last word than <c>and</c>.</summary>
    public static string List(IReadOnlyList<string> names, string last = "and") => names.Count switch
    {
        0 => "nothing",
        1 => names[0],
        _ => $"{string.Join(", ", names.Take(names.Count - 1))} {last} {names[^1]}",
    };
}
