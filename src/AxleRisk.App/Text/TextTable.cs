namespace AxleRisk.App.Text;

/// <summary>
/// A table of text, its columns as wide as their widest cell; the first column is set left, the others right unless said.
/// </summary>
internal sealed class TextTable
{
    private const string Gap = "  ";
    private readonly string[] headers;
    private readonly bool[] left;
    private readonly bool[] bars;
    private readonly List<string[]> rows = [];

    /// <summary>
    /// Creates a table; a header that begins with <c>&lt;</c> makes a column set left, one that is <c>#</c> a column of bars
    /// made of characters, without a heading.
    /// </summary>
    public TextTable(params string[] headers)
    {
        left = [.. headers.Select((h, i) => i == 0 || h.StartsWith('<') || h == "#")];
        bars = [.. headers.Select(h => h == "#")];
        this.headers = [.. headers.Select(h => h.TrimStart('<', '#'))];
    }

    /// <summary>The columns that hold words or figures, not bars: their places, headings and whether they are set left.</summary>
    public IEnumerable<(int Place, string Header, bool IsLeft)> Columns =>
        headers.Select((h, i) => (i, h, left[i])).Where(c => !bars[c.i]);

    /// <summary>The rows; missing cells at the end of a row are empty.</summary>
    public IReadOnlyList<string[]> Rows => rows;

    /// <summary>Adds a row; missing cells at its end are empty.</summary>
    public void Add(params string[] cells) => rows.Add(cells);

    /// <summary>The lines. The first column is shortened where the table would be wider than <paramref name="width"/>.</summary>
    public IEnumerable<string> Lines(int width)
    {
        int[] widths = [.. headers.Select((h, c) => rows.Select(r => Cell(r, c).Length).Append(h.Length).Max())];
        int excess = widths.Sum() + (Gap.Length * widths.Length) - width;
        widths[0] -= Math.Clamp(excess, 0, Math.Max(0, widths[0] - 12));
        yield return Line(headers, widths);
        foreach (string[] row in rows)
        {
            yield return Line(row, widths);
        }
    }

    /// <summary>
    /// A text of at most <paramref name="width"/> characters: its middle is left out, for a factor's name tells the leg first and
    /// the quantity last.
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

    /// <summary>A cell, empty where the row has none.</summary>
    public static string Cell(string[] row, int column) => column < row.Length ? row[column] : "";

    private string Line(string[] cells, int[] widths) =>
        (Gap + string.Join(Gap, widths.Select((w, c) =>
        {
            string cell = Shorten(Cell(cells, c), w);
            return left[c] ? cell.PadRight(w) : cell.PadLeft(w);
        }))).TrimEnd();
}
