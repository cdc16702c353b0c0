using System.Collections.Immutable;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Text;

/// <summary>A table in the making: the first column is set left, the others right unless said.</summary>
internal sealed class TextTable
{
    private readonly string[] headers;
    private readonly List<Cell[]> rows = [];

    /// <summary>
    /// Creates a table; a header that begins with <c>&lt;</c> makes a column set left, one with <c>&gt;</c> sets the first right,
    /// one with <c>|</c> has a rule before it, one that is <c>#</c> is of bars made of characters, without a heading.
    /// </summary>
    public TextTable(params string[] headers) => this.headers = headers;

    /// <summary>The number of rows.</summary>
    public int Count => rows.Count;

    /// <summary>Adds a row; missing cells at its end are empty.</summary>
    public void Add(params string[] cells) => rows.Add([.. cells.Select(c => new Cell(c))]);

    /// <summary>Adds a row whose first cell has small print under its text: the key of what is named there.</summary>
    public void AddNoted(string note, params string[] cells) =>
        rows.Add([new Cell(cells[0], Note: note), .. cells.Skip(1).Select(c => new Cell(c))]);

    /// <summary>The table as a block of an answer.</summary>
    /// <param name="caption">What it shows.</param>
    /// <param name="longHeaders">
    /// Headings for where there is room and little stands around them, in place of its own; none to keep them, else one for
    /// each column but those of bars.
    /// </param>
    public Table Captioned(string caption, params string[] longHeaders)
    {
        int next = 0;
        return new Table(
            caption,
            [
                .. headers.Select((h, i) =>
                {
                    string own = h.TrimStart('<', '>', '|', '#');
                    bool isBar = h == "#";
                    string header = isBar || longHeaders.Length == 0 ? own : longHeaders[next++];
                    return new Column(header, h.StartsWith('<') || isBar)
                    {
                        Short = own,
                        IsBar = isBar,
                        IsRight = h.StartsWith('>'),
                        HasRule = h.StartsWith('|'),
                    };
                }),
            ],
            [.. rows.Select(row => headers.Select((_, i) => i < row.Length ? row[i] : new Cell("")).ToImmutableArray())]);
    }

    /// <summary>
    /// A text of at most <paramref name="width"/> characters: its middle is left out, for a path or a key tells most at its ends.
    /// </summary>
    public static string Shorten(string text, int width)
    {
        if (text.Length <= width)
        {
            return text;
        }

        int head = (width - 2) / 2;
        return string.Concat(text.AsSpan(0, head), "..", text.AsSpan(text.Length - (width - 2 - head)));
    }

    /// <summary>The beginning of a list, of at most <paramref name="width"/> characters: whole parts of it where one has room.</summary>
    public static string Begin(string list, int width)
    {
        if (list.Length <= width)
        {
            return list;
        }

        int end = list.LastIndexOf(", ", width - 4, StringComparison.Ordinal);
        return end > 0 ? list[..end] + ", .." : list[..(width - 2)].TrimEnd() + "..";
    }

    /// <summary>
    /// Names under each other, each of at most <paramref name="width"/> characters: the end of a long one is left out, for it
    /// tells least (roughness of gravel within its class); where two would look alike without it, the middle.
    /// </summary>
    public static string[] Shorten(IReadOnlyList<string> names, int width)
    {
        string[] cut = [.. names.Select(n => n.Length <= width ? n : n[..(width - 2)].TrimEnd() + "..")];
        bool LooksLikeAnother(int i) => Enumerable.Range(0, cut.Length).Any(j => cut[j] == cut[i] && names[j] != names[i]);
        return [.. names.Select((n, i) => LooksLikeAnother(i) ? Shorten(n, width) : cut[i])];
    }
}
