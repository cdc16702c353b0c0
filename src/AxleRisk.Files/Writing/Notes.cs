using Tomlyn.Syntax;

namespace AxleRisk.Files.Writing;

/// <summary>
/// The note of a value: the comment behind it on its line; where there is none, the lines of comment directly above it, unless
/// they are directly below a header and so are about the table.
/// </summary>
internal static class Notes
{
    /// <summary>The note; empty where there is none.</summary>
    public static string Of(string text, Place place)
    {
        if (Behind(text, place) is not { } behind)
        {
            return "";
        }

        if (Words(text[behind.From..behind.To]) is { Length: > 0 } note)
        {
            return note;
        }

        (int from, int to) = Above(text, place);
        return string.Join(' ', text[from..to].Split('\n').Select(Words).Where(w => w.Length > 0));
    }

    /// <summary>What writes a note in the place of the one there is; an empty one takes it away.</summary>
    /// <exception cref="EditException">The value shares its line with others, so that a comment there is not its own.</exception>
    public static IEnumerable<Splice> Write(string text, Place place, string note)
    {
        (int from, int to) = Behind(text, place)
            ?? throw new EditException("a value that shares its line with others has no note of its own");
        string line = string.Join(' ', note.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        (int aboveFrom, int aboveTo) = Words(text[from..to]).Length > 0 ? (0, 0) : Above(text, place);
        yield return new Splice(from, to, line.Length > 0 ? $" # {line}" : "");
        if (aboveTo > aboveFrom)
        {
            yield return new Splice(aboveFrom, aboveTo, "");
        }
    }

    /// <summary>What stands between the value and the end of its line, blanks and a comment; null where more does.</summary>
    private static (int From, int To)? Behind(string text, Place place)
    {
        if (Value(place) is not { } value)
        {
            return null;
        }

        int from = value.Span.End.Offset + 1;
        int to = TextLines.End(text, from < text.Length ? from : text.Length);
        to -= text[from..to].Length - text[from..to].TrimEnd('\r', '\n').Length;
        string rest = text[from..to].TrimStart();
        return rest.Length == 0 || rest[0] == '#' ? (from, to) : null;
    }

    private static (int From, int To) Above(string text, Place place)
    {
        int start = TextLines.Start(text, Value(place)!.Span.Start.Offset);
        int from = TextLines.StartOfComments(text, start);
        string before = from == 0 ? "" : LineAbove(text, from).Trim();
        return from == 0 || before.StartsWith('[') ? (start, start) : (from, start);
    }

    private static string LineAbove(string text, int start) => text[TextLines.Start(text, start - 1)..start];

    private static ValueSyntax? Value(Place place) => place switch
    {
        ValuePlace value => value.Syntax,
        TablePlace { Inline: { } inline } => inline.Syntax,
        ArrayPlace { Inline: { } inline } => inline.Syntax,
        _ => null,
    };

    private static string Words(string comment) => comment.Trim().TrimStart('#').Trim();
}
