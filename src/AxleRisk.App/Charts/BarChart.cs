using AxleRisk.App.Text;

namespace AxleRisk.App.Charts;

/// <summary>One bar.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Value">Its length; below 0 or not finite is drawn as 0.</param>
/// <param name="Low">The lower end of its interval; NaN for none.</param>
/// <param name="High">The upper end.</param>
/// <param name="Text">Its value in words, at the end of the row.</param>
internal sealed record Bar(string Name, double Value, double Low, double High, string Text)
{
    /// <summary>What stands before the name, as long for every bar, and is never shortened.</summary>
    public string Lead { get; init; } = "";

    /// <summary>Whether the row is chosen: its name and value say so, the bar stays as it is.</summary>
    public bool IsChosen { get; init; }
}

/// <summary>
/// Bars to the right with their intervals, a row each: full as far as the lower end of the interval, shaded on to the value, and
/// a whisker to the upper end. Without an interval a bar ends to an eighth of a cell.
/// </summary>
internal static class BarChart
{
    /// <summary>Draws the bars, as many as there are rows.</summary>
    /// <param name="bars">The bars, first at the top.</param>
    /// <param name="width">The width of the picture.</param>
    /// <param name="height">Its height.</param>
    /// <param name="full">The value of a full bar; null for the largest there is.</param>
    public static Picture Draw(IReadOnlyList<Bar> bars, int width, int height, double? full = null)
    {
        var picture = new Picture(width, height);
        int text = bars.Select(b => b.Text.Length).DefaultIfEmpty(0).Max();
        int name = Math.Min(bars.Select(b => b.Lead.Length + b.Name.Length).DefaultIfEmpty(0).Max(), Math.Max(8, (width - text) / 2));
        int room = width - name - text - 3;
        if (room < 3)
        {
            (name, room) = (width - text - 1, 0);
        }

        if (name < 4)
        {
            return Picture.Saying(width, height, "too small for a chart");
        }

        double most = full ?? bars.SelectMany(b => new[] { b.Value, b.High }).Where(double.IsFinite).DefaultIfEmpty(0).Max();
        int lead = bars.Select(b => b.Lead.Length).DefaultIfEmpty(0).Max();
        string[] names = TextTable.Shorten([.. bars.Select(b => b.Name)], Math.Max(4, name - lead));
        for (int row = 0; row < Math.Min(height, bars.Count); row++)
        {
            Bar bar = bars[row];
            ChartRole role = bar.IsChosen ? ChartRole.Chosen : ChartRole.Text;
            picture.Text(0, row, (bar.Lead + names[row]).PadRight(bar.IsChosen ? name : 0), role);
            picture.Text(width - bar.Text.Length, row, bar.Text, role);
            if (room > 0 && most > 0)
            {
                DrawBar(picture, name + 1, row, room, bar, most);
            }
        }

        return picture;
    }

    private static void DrawBar(Picture picture, int left, int row, int room, Bar bar, double most)
    {
        double Cells(double value) => double.IsFinite(value) ? Math.Clamp(value / most, 0, 1) * room : 0;
        if (!(double.IsFinite(bar.Low) && double.IsFinite(bar.High)))
        {
            Blocks.Right(picture, left, row, Cells(bar.Value), ChartRole.Line);
            return;
        }

        (int low, int value, int high) = ((int)Math.Round(Cells(bar.Low)), (int)Math.Round(Cells(bar.Value)),
            (int)Math.Round(Cells(bar.High)));
        if (high - low <= 1)
        {
            // The interval is narrower than a cell.
            Blocks.Right(picture, left, row, Cells(bar.Value), ChartRole.Line);
            return;
        }

        for (int i = 0; i < high; i++)
        {
            (char glyph, ChartRole role) = i < low ? ('█', ChartRole.Line) : i < value ? ('▒', ChartRole.Line) : i == high - 1
                ? ('┤', ChartRole.Band) : ('─', ChartRole.Band);
            picture.Put(left + i, row, glyph, role);
        }
    }
}
