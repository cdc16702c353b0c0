namespace AxleRisk.App.Charts;

/// <summary>The axes of a chart: their room, their ticks and labels, and the place of every value.</summary>
internal sealed class PlotFrame
{
    private const int LeastWidth = 16, LeastHeight = 5;

    private readonly Picture picture;
    private readonly Scale across, up;
    private readonly ChartAxis x, y;
    private readonly IReadOnlyList<double> upTicks;

    private PlotFrame(Picture picture, ChartAxis x, Scale across, ChartAxis y, Scale up)
    {
        (this.picture, this.x, this.y, this.across) = (picture, x, y, across);
        bool titles = picture.Height >= 8;
        Top = titles ? 1 : 0;
        Rows = picture.Height - Top - (titles ? 3 : 2);
        int most = Math.Max(1, (Rows + 1) / 2);
        this.up = y.Range is null ? up.ToTicks(most) : up;
        upTicks = Ticks.On(this.up, most);
        Left = upTicks.Select(t => y.Show(t).Length).DefaultIfEmpty(0).Max() + 1;
        Columns = picture.Width - Left - 1;
        HasTitles = titles;
    }

    /// <summary>The first column and row inside the axes, and how many there are.</summary>
    public int Left { get; }

    public int Top { get; }

    public int Columns { get; }

    public int Rows { get; }

    public bool HasTitles { get; }

    /// <summary>The column left of which the axis stands.</summary>
    public int FirstColumn => Left + 1;

    /// <summary>The frame of a picture; null where there is no room for one.</summary>
    public static PlotFrame? Of(Picture picture, ChartAxis x, Scale across, ChartAxis y, Scale up)
    {
        if (picture.Width < LeastWidth || picture.Height < LeastHeight)
        {
            return null;
        }

        var frame = new PlotFrame(picture, x, across, y, up);
        return frame.Columns >= 6 ? frame : null;
    }

    /// <summary>
    /// The dots' place of a value, from the top left of the inside; NaN where it has none. Far outside it is brought near.
    /// </summary>
    public (double X, double Y) Dot(double vx, double vy) =>
        (Near(across.Position(vx)) * ((2 * Columns) - 1), (1 - Near(up.Position(vy))) * ((4 * Rows) - 1));

    /// <summary>The value across at a column of dots.</summary>
    public double AcrossAt(int dot) => across.Value(dot / ((2.0 * Columns) - 1));

    /// <summary>The column of a value across; null where it is not on the axis.</summary>
    public int? ColumnOf(double vx) => across.Position(vx) is >= -1e-9 and <= 1 + 1e-9 and double p
        ? FirstColumn + (int)Math.Round(p * (Columns - 1)) : null;

    /// <summary>The row of a value up; null where it is not on the axis.</summary>
    public int? RowOf(double vy) => up.Position(vy) is >= -1e-9 and <= 1 + 1e-9 and double p
        ? Top + (int)Math.Round((1 - p) * (Rows - 1)) : null;

    /// <summary>Draws the axes, ticks, labels and titles.</summary>
    public void Draw()
    {
        int bottom = Top + Rows;
        for (int row = Top; row < bottom; row++)
        {
            picture.Put(Left, row, '│', ChartRole.Axis);
        }

        foreach (double tick in upTicks)
        {
            int row = Top + (int)Math.Round((1 - up.Position(tick)) * (Rows - 1));
            string label = y.Show(tick);
            picture.Put(Left, row, '┤', ChartRole.Axis);
            picture.Text(Left - label.Length, row, label);
        }

        picture.Put(Left, bottom, '└', ChartRole.Axis);
        for (int column = FirstColumn; column < FirstColumn + Columns; column++)
        {
            picture.Put(column, bottom, '─', ChartRole.Axis);
        }

        DrawAcross(bottom);
        if (HasTitles)
        {
            picture.Text(0, 0, Cut(y.Title));
            picture.Text(Math.Max(0, picture.Width - x.Title.Length), bottom + 2, Cut(x.Title));
        }
    }

    private void DrawAcross(int bottom)
    {
        // As many ticks as labels fit with two blanks between.
        for (int most = Math.Max(1, Columns / 5); most >= 1; most--)
        {
            (int Column, string Label)[] ticks = [.. Ticks.On(across, most).Select(t => (Column: ColumnOf(t) ?? -1, Label: x.Show(t)))
                .Where(t => t.Column >= 0)];
            int[] starts = [.. ticks.Select(t => Math.Clamp(t.Column - (t.Label.Length / 2), 0,
                Math.Max(0, picture.Width - t.Label.Length)))];
            bool fits = Enumerable.Range(1, Math.Max(0, ticks.Length - 1))
                .All(i => starts[i] >= starts[i - 1] + ticks[i - 1].Label.Length + 2);
            if (!fits && most > 1)
            {
                continue;
            }

            for (int i = 0; i < ticks.Length; i++)
            {
                picture.Put(ticks[i].Column, bottom, '┬', ChartRole.Axis);
                picture.Text(starts[i], bottom + 1, ticks[i].Label);
            }

            return;
        }
    }

    private string Cut(string text) => text.Length <= picture.Width ? text : text[..picture.Width];

    private static double Near(double position) => double.IsNaN(position) ? position : Math.Clamp(position, -2, 3);
}
