using AxleRisk.Files.Writing;

namespace AxleRisk.App.Charts;

/// <summary>
/// The parts of a whole as bars, a row each, with percents that add up to 100.0 as they are shown; a part below 0.05 may show as
/// 0.0.
/// </summary>
internal static class ShareBars
{
    public static Picture Draw(IReadOnlyList<(string Name, double Share)> parts, int width, int height)
    {
        double[] shares = [.. parts.Select(p => double.IsFinite(p.Share) && p.Share > 0 ? p.Share : 0)];
        if (!(shares.Sum() is > 0 and < double.PositiveInfinity))
        {
            return Picture.Saying(width, height, "nothing to draw");
        }

        double sum = shares.Sum();
        decimal[] percents = [.. Shares.Rounded(shares, 3).Select(s => 100 * s)];
        return BarChart.Draw(
            [.. parts.Select((p, i) => new Bar(p.Name, shares[i] / sum, double.NaN, double.NaN, $"{percents[i]:0.0} %".PadLeft(7)))],
                width, height, full: 1);
    }
}
