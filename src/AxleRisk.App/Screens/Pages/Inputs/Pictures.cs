using AxleRisk.App.Text;
using AxleRisk.Core.Distributions;

namespace AxleRisk.App.Screens.Pages.Inputs;

/// <summary>Pictures of inputs.</summary>
internal static class Pictures
{
    /// <summary>A distribution with its 5, 50 and 95 % points.</summary>
    public static IReadOnlyList<PageLine> Density(Distribution distribution, int width, int height) =>
        [PageLine.Of(TextTable.Shorten(Points(distribution), Math.Max(4, width)), Ink.Quiet)];

    private static string Points(Distribution d) =>
        $"5 % {Figures.Number(d.Quantile(0.05))}  50 % {Figures.Number(d.Quantile(0.5))}  95 % {Figures.Number(d.Quantile(0.95))}";
}
