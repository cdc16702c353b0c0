using System.Collections.Immutable;

namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>DNV-RP-C203, table 2-1, S-N curves in air, editions 2016 to 2019. (The edition of 2024 changes C, C1 and C2.)</summary>
internal static class DnvCurves
{
    public const string Catalogue = "DNV-RP-C203";

    private const string Source =
        "DNV-RP-C203 (2016-2019) table 2-1, in air; design = mean - 2 standard deviations, standard deviation 0.20 of log10 N";

    public static ImmutableArray<SnCurve> All { get; } =
    [
        Row("B1", 4, 15.117, 17.146, 0),
        Row("B2", 4, 14.885, 16.856, 0),
        Row("C", 3, 12.592, 16.320, 0.05),
        Row("C1", 3, 12.449, 16.081, 0.10),
        Row("C2", 3, 12.301, 15.835, 0.15),
        Row("D", 3, 12.164, 15.606, 0.20),
        Row("E", 3, 12.010, 15.350, 0.20),
        Row("F", 3, 11.855, 15.091, 0.25),
        Row("F1", 3, 11.699, 14.832, 0.25),
        Row("F3", 3, 11.546, 14.576, 0.25),
        Row("G", 3, 11.398, 14.330, 0.25),
        Row("W1", 3, 11.261, 14.101, 0.25),
        Row("W2", 3, 11.107, 13.845, 0.25),
        Row("W3", 3, 10.970, 13.617, 0.25),
    ];

    private static SnCurve Row(string category, double m1, double log10A1, double log10A2, double thicknessExponent) => new()
    {
        Catalogue = Catalogue,
        Category = category,
        Lines = [new(m1, log10A1), new(5, log10A2)],
        ThicknessExponent = thicknessExponent,
        DesignToMeanLog10 = 2 * 0.20,
        Source = Source,
    };
}
