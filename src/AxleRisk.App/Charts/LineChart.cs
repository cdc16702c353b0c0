namespace AxleRisk.App.Charts;

/// <summary>A chart of lines with intervals and marked places.</summary>
/// <param name="X">The axis across.</param>
/// <param name="Y">The axis up.</param>
internal sealed record LineChart(ChartAxis X, ChartAxis Y)
{
    private const char Ring = 'o';

    /// <summary>The lines, the most important first.</summary>
    public IReadOnlyList<ChartSeries> Series { get; init; } = [];

    /// <summary>The intervals.</summary>
    public IReadOnlyList<ChartBand> Bands { get; init; } = [];

    /// <summary>The single points.</summary>
    public IReadOnlyList<ChartPoints> Points { get; init; } = [];

    /// <summary>The marked places.</summary>
    public IReadOnlyList<ChartMark> Marks { get; init; } = [];

    /// <summary>The marked places on the axis up.</summary>
    public IReadOnlyList<ChartLevel> Levels { get; init; } = [];

    /// <summary>Draws it.</summary>
    public Picture Draw(int width, int height)
    {
        var picture = new Picture(width, height);
        if (Range(X, Series.SelectMany(s => s.X).Concat(Bands.SelectMany(b => b.X)).Concat(Points.SelectMany(p => p.X))) is not { } across
            || Range(Y, Series.SelectMany(s =>
                s.Y).Concat(Bands.SelectMany(b => b.Low.Concat(b.High))).Concat(Points.SelectMany(p => p.Y))) is not { } up)
        {
            return Picture.Saying(width, height, "nothing to draw");
        }

        if (PlotFrame.Of(picture, X, across, Y, up) is not { } frame)
        {
            return Picture.Saying(width, height, "too small for a chart");
        }

        frame.Draw();
        var dots = new BrailleCanvas(frame.Columns, frame.Rows);
        foreach (ChartBand band in Bands)
        {
            DrawBand(dots, frame, band);
        }

        for (int i = Series.Count - 1; i >= 0; i--)
        {
            DrawSeries(dots, frame, Series[i], Role(i));
        }

        dots.Put(picture, frame.FirstColumn, frame.Top);
        foreach (ChartPoints points in Points)
        {
            DrawPoints(picture, frame, points);
        }

        foreach (ChartLevel level in Levels)
        {
            DrawLevel(picture, frame, level);
        }

        foreach (ChartMark mark in Marks)
        {
            DrawMark(picture, frame, mark);
        }

        DrawLabels(picture, frame);
        if (frame.HasTitles)
        {
            DrawLegend(picture);
        }

        return picture;
    }

    /// <summary>The role of a series by its place.</summary>
    public static ChartRole Role(int index) => index switch { 0 => ChartRole.Line, 1 => ChartRole.SecondLine, _ => ChartRole.ThirdLine };

    private static Scale? Range(ChartAxis axis, IEnumerable<double> values) =>
        axis.Range is (double low, double high) && high > low && (!axis.IsLog || low > 0)
            ? new Scale(low, high, axis.IsLog) { IsProbability = axis.IsProbability } : Scale.Of(values, axis.IsLog);

    private static void DrawSeries(BrailleCanvas dots, PlotFrame frame, ChartSeries series, ChartRole role)
    {
        int drawn = 0;
        (double X, double Y)? last = null;
        for (int i = 0; i < Math.Min(series.X.Count, series.Y.Count); i++)
        {
            (double X, double Y) at = frame.Dot(series.X[i], series.Y[i]);
            if (!(double.IsFinite(at.X) && double.IsFinite(at.Y)))
            {
                last = null;
                continue;
            }

            dots.Line(last ?? at, at, role, series.Dash, ref drawn);
            last = at;
        }
    }

    private static void DrawBand(BrailleCanvas dots, PlotFrame frame, ChartBand band)
    {
        for (int x = 0; x < dots.Width; x++)
        {
            double value = frame.AcrossAt(x);
            if (Between(band.X, band.Low, value) is double low && Between(band.X, band.High, value) is double high)
            {
                // A lower end that has no place, such as 0 on a logarithmic axis, is at the bottom.
                (double top, double bottom) = (frame.Dot(value, high).Y, frame.Dot(value, low).Y);
                dots.Shade(x, top, double.IsNaN(bottom) ? dots.Height : bottom);
            }
        }
    }

    private static double? Between(IReadOnlyList<double> xs, IReadOnlyList<double> ys, double x)
    {
        for (int i = 1; i < Math.Min(xs.Count, ys.Count); i++)
        {
            if (x >= xs[i - 1] && x <= xs[i] && xs[i] > xs[i - 1])
            {
                double y = ys[i - 1] + ((x - xs[i - 1]) / (xs[i] - xs[i - 1]) * (ys[i] - ys[i - 1]));
                return double.IsFinite(y) ? y : null;
            }
        }

        return null;
    }

    private static void DrawPoints(Picture picture, PlotFrame frame, ChartPoints points)
    {
        foreach ((double x, double y) in points.X.Zip(points.Y))
        {
            if (frame.ColumnOf(x) is int column && frame.RowOf(y) is int row)
            {
                picture.Put(column, row, Ring, ChartRole.Mark);
            }
        }
    }

    private static void DrawLevel(Picture picture, PlotFrame frame, ChartLevel level)
    {
        if (frame.RowOf(level.Y) is not int row)
        {
            return;
        }

        for (int column = frame.FirstColumn; column < frame.FirstColumn + frame.Columns; column++)
        {
            // It runs behind the lines and before the intervals.
            if (picture[column, row].Role is ChartRole.Blank or ChartRole.Band)
            {
                picture.Put(column, row, '┄', ChartRole.Mark);
            }
        }

        // At the left, where a curve of failures has not yet risen; above the line unless that is the top.
        picture.Text(frame.FirstColumn + 1, row > frame.Top ? row - 1 : row + 1, level.Label, ChartRole.Mark);
    }

    private static void DrawMark(Picture picture, PlotFrame frame, ChartMark mark)
    {
        if (frame.ColumnOf(mark.X) is not int column)
        {
            return;
        }

        for (int row = frame.Top; row < frame.Top + frame.Rows; row++)
        {
            // It runs behind the lines and before the intervals.
            if (picture[column, row].Role is ChartRole.Blank or ChartRole.Band)
            {
                picture.Put(column, row, '┆', ChartRole.Mark);
            }
        }

        picture.Put(column, frame.Top + frame.Rows, '┴', ChartRole.Mark);
    }

    // Where the least of the lines is covered: right or left of the mark, from the top down.
    private void DrawLabels(Picture picture, PlotFrame frame)
    {
        foreach (ChartMark mark in Marks)
        {
            if (frame.ColumnOf(mark.X) is not int column)
            {
                continue;
            }

            int[] starts = [column + 2, column - 1 - mark.Label.Length];
            var places = from row in Enumerable.Range(frame.Top, frame.Rows)
                         from start in starts
                         where start >= frame.FirstColumn && start + mark.Label.Length <= picture.Width
                         let covered = Enumerable.Range(start - 1, mark.Label.Length + 2)
                             .Count(c => c < picture.Width && picture[c, row].Role != ChartRole.Blank)
                         orderby covered
                         select (start, row);
            foreach ((int start, int row) in places.Take(1))
            {
                picture.Text(start, row, mark.Label, ChartRole.Mark);
            }
        }
    }

    private void DrawLegend(Picture picture)
    {
        var entries = Series.Select((s, i) => (Glyphs: s.Dash switch { Dash.Dashed => "╌╌", Dash.Dotted => "··", _ => "──" }, s.Name,
            Role: Role(i)))
            .Concat(Bands.Select(b => (Glyphs: "⡢⡢", b.Name, Role: ChartRole.Band)))
            .Concat(Points.Select(p => (Glyphs: $" {Ring}", p.Name, Role: ChartRole.Mark))).Where(e => e.Name.Length > 0).ToArray();
        int x = picture.Width - entries.Sum(e => e.Name.Length + 5) + 2;
        if (x < Y.Title.Length + 2)
        {
            return;
        }

        foreach ((string glyphs, string name, ChartRole role) in entries)
        {
            picture.Text(x, 0, glyphs, role);
            picture.Text(x + 3, 0, name);
            x += name.Length + 5;
        }
    }
}
