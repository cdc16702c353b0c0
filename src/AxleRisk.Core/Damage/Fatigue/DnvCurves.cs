using System.Collections.Immutable;

namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>
/// DNV-RP-C203, editions 2016 to 2019: S-N curves in air (table 2-1), in seawater with cathodic protection (table 2-2, with the knee at 1e6
/// cycles) and of free corrosion in seawater (table 2-4, one slope). The values in seawater are from memory; but for B1 and B2 in free
/// corrosion a test derives them from those in air. (The edition of 2024 changes C, C1 and C2.)
/// </summary>
internal static class DnvCurves
{
    public const string Catalogue = "DNV-RP-C203";

    private const string Spread = "design = mean - 2 standard deviations, standard deviation 0.20 of log10 N";

    private static readonly Row[] Rows =
    [
        new("B1", 4, 15.117, 17.146, 14.917, 12.436, 0),
        new("B2", 4, 14.885, 16.856, 14.685, 12.262, 0),
        new("C", 3, 12.592, 16.320, 12.192, 12.115, 0.05),
        new("C1", 3, 12.449, 16.081, 12.049, 11.972, 0.10),
        new("C2", 3, 12.301, 15.835, 11.901, 11.824, 0.15),
        new("D", 3, 12.164, 15.606, 11.764, 11.687, 0.20),
        new("E", 3, 12.010, 15.350, 11.610, 11.533, 0.20),
        new("F", 3, 11.855, 15.091, 11.455, 11.378, 0.25),
        new("F1", 3, 11.699, 14.832, 11.299, 11.222, 0.25),
        new("F3", 3, 11.546, 14.576, 11.146, 11.068, 0.25),
        new("G", 3, 11.398, 14.330, 10.998, 10.921, 0.25),
        new("W1", 3, 11.261, 14.101, 10.861, 10.784, 0.25),
        new("W2", 3, 11.107, 13.845, 10.707, 10.630, 0.25),
        new("W3", 3, 10.970, 13.617, 10.570, 10.493, 0.25),
    ];

    /// <summary>The curves of each environment, air first.</summary>
    public static ImmutableArray<SnCurve> All { get; } =
    [
        .. Rows.Select(r => r.Curve(Surroundings.Air, "table 2-1, in air", new(r.Slope, r.Air), new(5, r.Below))),
        .. Rows.Select(r => r.Curve(
            Surroundings.Protected, "table 2-2, in seawater with cathodic protection, from memory", new(r.Slope, r.Protected), new(5, r.Below))),
        .. Rows.Select(r => r.Curve(Surroundings.Corroding, "table 2-4, free corrosion in seawater, from memory", new SnLine(3, r.Corroding))),
    ];

    /// <summary>A category's slope above the knee, log10 a above and below it in air, above it protected, and of free corrosion.</summary>
    private sealed record Row(
        string Category, double Slope, double Air, double Below, double Protected, double Corroding, double ThicknessExponent)
    {
        public SnCurve Curve(string environment, string table, params ImmutableArray<SnLine> lines) => new()
        {
            Catalogue = Catalogue,
            Category = Category,
            Environment = environment,
            Lines = lines,
            ThicknessExponent = ThicknessExponent,
            DesignToMeanLog10 = 2 * 0.20,
            Source = $"DNV-RP-C203 (2016-2019) {table}; {Spread}",
        };
    }
}
