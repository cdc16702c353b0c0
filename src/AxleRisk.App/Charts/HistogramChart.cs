namespace AxleRisk.App.Charts;

/// <summary>Bars of counts over equal ranges.</summary>
internal static class HistogramChart
{
    /// <summary>Draws values in bins; those that are not finite are left out.</summary>
    public static Picture Of(IEnumerable<double> values, string title, int width, int height)
    {
        double[] finite = [.. values.Where(double.IsFinite)];
        if (Scale.Of(finite, false) is not { } scale)
        {
            return Picture.Saying(width, height, "nothing to draw");
        }

        double[] counts = new double[Math.Clamp((int)Math.Sqrt(finite.Length), 5, Math.Max(5, width / 3))];
        foreach (double v in finite)
        {
            counts[Math.Clamp((int)(scale.Position(v) * counts.Length), 0, counts.Length - 1)]++;
        }

        return Draw(scale.Low, scale.High, counts, title, width, height);
    }

    /// <summary>Draws counts, or shares, of equal ranges from a low to a high value.</summary>
    public static Picture Draw(double low, double high, IReadOnlyList<double> counts, string title, int width, int height)
    {
        double most = counts.Where(double.IsFinite).DefaultIfEmpty(0).Max();
        if (!(high > low && most > 0))
        {
            return Picture.Saying(width, height, "nothing to draw");
        }

        var picture = new Picture(width, height);
        var x = new ChartAxis(title);
        if (PlotFrame.Of(picture, x, new Scale(low, high, false), new ChartAxis(""), new Scale(0, most, false)) is not { } frame)
        {
            return Picture.Saying(width, height, "too small for a chart");
        }

        frame.Draw();
        double top = frame.Dot(low, most).Y / 4;
        for (int column = 0; column < frame.Columns; column++)
        {
            double count = counts[Math.Min(counts.Count - 1, column * counts.Count / frame.Columns)];
            Blocks.Upward(picture, frame.FirstColumn + column, frame.Top + frame.Rows - 1,
                double.IsFinite(count) ? count / most * (frame.Rows - top) : 0, ChartRole.Line);
        }

        return picture;
    }
}
