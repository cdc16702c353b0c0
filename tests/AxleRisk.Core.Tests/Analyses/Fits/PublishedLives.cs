using AxleRisk.Core.Analyses.Fits;

namespace AxleRisk.Core.Tests.Analyses.Fits;

/// <summary>Published life data.</summary>
internal static class PublishedLives
{
    /// <summary>NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.2: 20 units for 500 h, 10 failures.</summary>
    public static Observation[] Nist { get; } =
    [
        .. new double[] { 54, 187, 216, 240, 244, 335, 361, 373, 375, 386 }.Select(h => Observation.At(h)),
        new(500, double.PositiveInfinity, 10),
    ];

    /// <summary>Lieblein and Zelen 1956 (J. Res. NBS 57): 23 ball bearings, millions of revolutions.</summary>
    public static Observation[] Bearings { get; } =
    [
        .. new[]
        {
            17.88, 28.92, 33.00, 41.52, 42.12, 45.60, 48.40, 51.84, 51.96, 54.12, 55.56, 67.80, 68.64, 68.64, 68.88, 84.12, 93.12, 98.64,
            105.12, 105.84, 127.92, 128.04, 173.40,
        }.Select(x => Observation.At(x)),
    ];

    /// <summary>
    /// Vehicle shock absorbers, km: O'Connor, Practical Reliability Engineering (1985), as in Meeker and Escobar, Statistical Methods
    /// for Reliability Data (1998), table C.2. Below 0: whole at that distance.
    /// </summary>
    public static Observation[] ShockAbsorbers { get; } =
    [
        .. new double[]
        {
            6700, -6950, -7820, -8790, 9120, -9660, -9820, -11310, -11690, -11850, -11880, -12140, 12200, -12870, 13150, -13330, -13470,
            -14040, 14300, 17520, -17540, -17890, -18450, -18960, -18980, -19410, 20100, -20100, -20150, -20320, 20900, 22700, -23490,
            26510, -27410, 27490, -27890, -28100,
        }.Select(km => km > 0 ? Observation.At(km) : new Observation(-km, double.PositiveInfinity, 1)),
    ];

    /// <summary>
    /// Months to breast retraction, radiotherapy alone: Finkelstein and Wolfe 1985 (Biometrics 41), from memory; the answer that the
    /// published one is compared with tells that they are remembered rightly. An end of 0 is open.
    /// </summary>
    public static Observation[] Intervals { get; } =
    [
        .. new (double From, double To)[]
        {
            (45, 0), (6, 10), (0, 7), (46, 0), (46, 0), (7, 16), (17, 0), (7, 14), (37, 44), (0, 8), (4, 11), (15, 0), (11, 15), (22, 0),
            (46, 0), (46, 0), (25, 37), (46, 0), (26, 40), (46, 0), (27, 34), (36, 44), (46, 0), (36, 48), (37, 0), (40, 0), (17, 25),
            (46, 0), (11, 18), (38, 0), (5, 12), (37, 0), (0, 5), (18, 0), (24, 0), (36, 0), (5, 11), (19, 35), (17, 25), (24, 0), (32, 0),
            (33, 0), (19, 26), (37, 0), (34, 0), (36, 0),
        }.Select(i => new Observation(i.From, i.To > 0 ? i.To : double.PositiveInfinity, 1)),
    ];
}
