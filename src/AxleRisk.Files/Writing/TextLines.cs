namespace AxleRisk.Files.Writing;

/// <summary>Lines of a text by the offsets of their characters.</summary>
internal static class TextLines
{
    /// <summary>The line end the text uses.</summary>
    public static string NewLine(string text) => text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";

    /// <summary>Where the line of an offset begins.</summary>
    public static int Start(string text, int at) => at == 0 ? 0 : text.LastIndexOf('\n', at - 1) + 1;

    /// <summary>Behind the end of the line of an offset, its line end included.</summary>
    public static int End(string text, int at) => text.IndexOf('\n', at) is >= 0 and int end ? end + 1 : text.Length;

    /// <summary>The blanks at the beginning of a line.</summary>
    public static string Indent(string text, int start)
    {
        int end = start;
        while (end < text.Length && text[end] is ' ' or '\t')
        {
            end++;
        }

        return text[start..end];
    }

    public static bool IsBlank(string text, int start, int end) => string.IsNullOrWhiteSpace(text[start..end]);

    /// <summary>Where the block of comments directly above a line begins; the line's own start where there is none.</summary>
    public static int StartOfComments(string text, int lineStart)
    {
        while (lineStart > 0)
        {
            int above = Start(text, lineStart - 1);
            if (!text.AsSpan(above, lineStart - above).TrimStart().StartsWith("#"))
            {
                break;
            }

            lineStart = above;
        }

        return lineStart;
    }
}
