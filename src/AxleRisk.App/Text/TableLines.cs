using AxleRisk.Reports.Content;

namespace AxleRisk.App.Text;

/// <summary>A table as lines, its columns as wide as their widest cell.</summary>
internal static class TableLines
{
    private const string Gap = "  ";

    /// <summary>The lines. The first column is shortened where the table would be wider than <paramref name="width"/>.</summary>
    public static IEnumerable<string> Of(Table table, int width)
    {
        string[] headers = [.. table.Columns.Select(c => c.Short ?? c.Header)];
        string[][] rows = [.. table.Rows.Select(row => row.Select(cell => cell.Text).ToArray())];
        bool[] left = [.. table.Columns.Select((c, i) => (i == 0 && !c.IsRight) || c.IsText)];
        int[] widths = [.. headers.Select((h, c) => rows.Select(r => r[c].Length).Append(h.Length).Max())];
        string[] gaps = [.. table.Columns.Select(c => c.HasRule ? Gap + "| " : Gap)];
        int excess = widths.Sum() + gaps.Sum(g => g.Length) - width;
        widths[0] -= Math.Clamp(excess, 0, Math.Max(0, widths[0] - 12));
        string[] names = TextTable.Shorten([.. rows.Prepend(headers).Select(r => r[0])], widths[0]);
        return rows.Prepend(headers).Select((cells, row) => Line([names[row], .. cells[1..]], widths, left, gaps));
    }

    private static string Line(string[] cells, int[] widths, bool[] left, string[] gaps) =>
        string.Concat(widths.Select((w, c) =>
        {
            string cell = TextTable.Shorten(cells[c], w);
            return gaps[c] + (left[c] ? cell.PadRight(w) : cell.PadLeft(w));
        })).TrimEnd();
}
