using AxleRisk.App.Text;
using AxleRisk.Core.Distributions;

namespace AxleRisk.App.Charts;

/// <summary>A distribution at a glance: its density, or the bars of a choice or sample, with its 5, 50 and 95 % points below.</summary>
internal static class DensityChart
{
    private static readonly double[] Points = [0.05, 0.5, 0.95];

    /// <summary>Draws a distribution.</summary>
    public static Picture Draw(Distribution distribution, string unit, int width, int height)
    {
        // The outermost thousandth is not worth the room.
        (double low, double high) = distribution.IsContinuous
            ? (distribution.Quantile(0.001), distribution.UpperQuantile(0.001))
            : (distribution.Minimum, distribution.Maximum);
        int rows = height - 3;
        if (rows < 1 || width < 16)
        {
            return Picture.Saying(width, height, "too small for a chart");
        }

        if (!(double.IsFinite(low) && double.IsFinite(high) && high > low))
        {
            return Picture.Saying(width, height, "nothing to draw");
        }

        double room = 0.04 * (high - low);
        var scale = new Scale(low - room, high + room, false);
        var picture = new Picture(width, height);
        if (distribution is NumberChoice choice)
        {
            DrawBars(picture, rows, choice, scale);
        }
        else
        {
            DrawDensity(picture, rows, distribution, scale);
        }

        DrawAxis(picture, rows, distribution, unit, scale);
        return picture;
    }

    // What a column of dots shows is the probability that falls into it: right for densities with poles and for samples, too.
    private static void DrawDensity(Picture picture, int rows, Distribution d, Scale scale)
    {
        var dots = new BrailleCanvas(picture.Width, rows);
        double[] heights = new double[dots.Width];
        double step = 1.0 / dots.Width;
        for (int x = 0; x < heights.Length; x++)
        {
            heights[x] = Math.Max(0, d.Cumulative(scale.Value((x + 1) * step)) - d.Cumulative(scale.Value(x * step)));
        }

        double most = heights.Max();
        int drawn = 0;
        (double X, double Y)? last = null;
        for (int x = 0; x < heights.Length; x++)
        {
            double y = (1 - (heights[x] / most)) * (dots.Height - 1);
            dots.Shade(x, y, dots.Height - 1);
            dots.Line(last ?? (x, y), (x, y), ChartRole.Line, Dash.Solid, ref drawn);
            last = (x, y);
        }

        dots.Put(picture, 0, 0);
    }

    private static void DrawBars(Picture picture, int rows, NumberChoice choice, Scale scale)
    {
        double most = choice.Weights.Max();
        for (int i = 0; i < choice.Values.Length; i++)
        {
            int x = (int)Math.Round(scale.Position(choice.Values[i]) * (picture.Width - 1));
            string label = $"{100 * choice.Weights[i]:0.#} %";
            double length = choice.Weights[i] / most * Math.Max(0.5, rows - 1);
            for (int column = x - 1; column <= x + 1; column++)
            {
                Blocks.Upward(picture, column, rows - 1, length, ChartRole.Line);
            }

            picture.Text(Math.Clamp(x - (label.Length / 2), 0, picture.Width - label.Length), rows - 1 - (int)Math.Ceiling(length), label);
        }
    }

    private static void DrawAxis(Picture picture, int rows, Distribution d, string unit, Scale scale)
    {
        int most = Math.Max(2, picture.Width / 12);
        int end = -2;
        for (int x = 0; x < picture.Width; x++)
        {
            picture.Put(x, rows, '─', ChartRole.Axis);
        }

        foreach (double tick in Ticks.On(scale, most))
        {
            int x = (int)Math.Round(scale.Position(tick) * (picture.Width - 1));
            string label = Ticks.Label(tick);
            int start = Math.Clamp(x - (label.Length / 2), 0, picture.Width - label.Length);
            picture.Put(x, rows, '┬', ChartRole.Axis);
            if (start >= end + 2)
            {
                picture.Text(start, rows + 1, label);
                end = start + label.Length;
            }
        }

        foreach (double p in Points)
        {
            picture.Put((int)Math.Round(scale.Position(d.Quantile(p)) * (picture.Width - 1)), rows, '▲', ChartRole.Mark);
        }

        string[] texts = [.. Points.Select(p => $"{100 * p:0} %: {Figures.Number(d.Quantile(p))}")];
        string line = $"▲ {string.Join("   ", texts)}{(unit.Length > 0 ? " " : "")}{unit}";
        picture.Text(0, rows + 2,
            line.Length <= picture.Width ? line : "▲ " + string.Join(", ", Points.Select(p => Figures.Number(d.Quantile(p)))),
            ChartRole.Mark);
    }
}
