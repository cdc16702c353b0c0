namespace AxleRisk.App.Text;

/// <summary>A table of text, its columns as wide as their widest cell; the first column is set left, the others right unless said.</summary>
internal sealed class TextTable
{
    private const string Gap = "  ";
    private readonly string[] headers;
    private readonly bool[] left;
    private readonly List<string[]> rows = [];

    /// <summary>Creates a table; a header that begins with <c>&lt;</c> makes a column set left.</summary>
    public TextTable(params string[] headers)
    {
        left = [.. headers.Select((h, i) => i == 0 || h.StartsWith('<'))];
        this.headers = [.. headers.Select(h => h.TrimStart('<'))];
    }

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

    /// <summary>A text of at most <paramref name="width"/> characters: its end is kept, for the end of a factor's name tells most.</summary>
    public static string Shorten(string text, int width) =>
        text.Length <= width ? text : string.Concat("..", text.AsSpan(text.Length - width + 2));

    private static string Cell(string[] row, int column) => column < row.Length ? row[column] : "";

    private string Line(string[] cells, int[] widths) =>
        (Gap + string.Join(Gap, widths.Select((w, c) =>
        {
            string cell = Shorten(Cell(cells, c), w);
            return left[c] ? cell.PadRight(w) : cell.PadLeft(w);
        }))).TrimEnd();
}
