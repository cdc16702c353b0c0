using System.Collections.Immutable;

namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>
/// IIW Recommendations (2016), steel, direct stress, from memory: the FAT class is the range at 2e6 cycles; the knee lies at 1e7 cycles,
/// and for variable amplitude the slope beyond is 2 m - 1, that is 5 for m = 3 and 9 for the m = 5 of FAT 160. The thickness exponent
/// belongs to the detail, not to the class, so it is 0 here and left to the user.
/// </summary>
internal static class IiwCurves
{
    public const string Catalogue = "IIW";

    /// <summary>What stands before the number in a category's name.</summary>
    public const string Prefix = "FAT ";

    private const double KneeCycles = 1e7;

    private const string Source =
        "IIW Recommendations (2016), steel, direct stress, variable amplitude; 97.7 % survival: mean = design + 2 x 0.20 in log10 N; "
        + "from memory";

    public static ImmutableArray<SnCurve> All { get; } =
        [.. new[] { 160, 140, 125, 112, 100, 90, 80, 71, 63, 56, 50, 45, 40, 36 }.Select(Row)];

    private static SnCurve Row(int fat)
    {
        double m = fat == 160 ? 5 : 3;
        double below = 2 * m - 1;
        double log10Knee = Math.Log10(fat) + Math.Log10(2e6 / KneeCycles) / m;
        return new()
        {
            Catalogue = Catalogue,
            Category = $"{Prefix}{fat}",
            Lines = [new(m, Math.Log10(KneeCycles) + m * log10Knee), new(below, Math.Log10(KneeCycles) + below * log10Knee)],
            DesignToMeanLog10 = 2 * 0.20,
            Source = Source,
        };
    }
}
