using System.Collections.Immutable;

namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>
/// EN 1993-1-9:2005, 7.1 and figure 7.1, direct stress: the category is the range at 2e6 cycles; m = 3 to 5e6 cycles, 5 to 1e8, and no
/// damage below the range at 1e8.
/// </summary>
internal static class EnCurves
{
    public const string Catalogue = "EN 1993-1-9";

    // 95 % survival lies 1.645 standard deviations below the mean.
    private const double DesignToMean = 1.645 * 0.20;

    private const string Source =
        "EN 1993-1-9:2005, 7.1 and figure 7.1, direct stress; mean = design + 1.645 x 0.20 in log10 N: assumption of ours, no source";

    public static ImmutableArray<SnCurve> All { get; } =
        [.. new[] { 160, 140, 125, 112, 100, 90, 80, 71, 63, 56, 50, 45, 40, 36 }.Select(Row)];

    private static SnCurve Row(int category)
    {
        double knee = category * Math.Cbrt(2.0 / 5);
        return new()
        {
            Catalogue = Catalogue,
            Category = category.ToString(),
            Lines = [new(3, Math.Log10(2e6) + 3 * Math.Log10(category)), new(5, Math.Log10(5e6) + 5 * Math.Log10(knee))],
            CutOffMPa = knee * Math.Pow(5.0 / 100, 1.0 / 5),
            DesignToMeanLog10 = DesignToMean,
            Source = Source,
        };
    }
}
