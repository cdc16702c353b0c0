namespace AxleRisk.Files.Writing;

/// <summary>Changes single lines of a text that may be no valid TOML; every other line and the line ends stay.</summary>
public static class LineEdits
{
    /// <summary>A line without its end, by its number from 1; empty beyond the last.</summary>
    public static string Line(string text, int line)
    {
        (int from, int to) = Range(text, line);
        return text[from..to].TrimEnd('\r', '\n');
    }

    /// <summary>The text with another line in the place of one.</summary>
    public static string Replace(string text, int line, string with)
    {
        int from = Range(text, line).From;
        return string.Concat(text.AsSpan(0, from), with, text.AsSpan(from + Line(text, line).Length));
    }

    /// <summary>The text with a new line behind one.</summary>
    public static string Insert(string text, int after, string line)
    {
        string newLine = TextLines.NewLine(text);
        (int from, int to) = Range(text, after);
        bool isEnded = to == from || text[to - 1] == '\n';
        return string.Concat(text.AsSpan(0, to), isEnded ? "" : newLine, line + newLine, text.AsSpan(to));
    }

    /// <summary>The text without a line.</summary>
    public static string Remove(string text, int line)
    {
        (int from, int to) = Range(text, line);
        return text.Remove(from, to - from);
    }

    /// <summary>Where a line begins, and where the next one does.</summary>
    private static (int From, int To) Range(string text, int line)
    {
        int from = 0;
        for (int i = 1; i < line && from < text.Length; i++)
        {
            from = TextLines.End(text, from);
        }

        return (from, from < text.Length ? TextLines.End(text, from) : from);
    }
}
