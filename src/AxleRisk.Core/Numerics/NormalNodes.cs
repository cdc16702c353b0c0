namespace AxleRisk.Core.Numerics;

/// <summary>
/// Gauss-Hermite quadrature for the standard normal density: exact for polynomials up to degree 23. Computed with numpy 1.24
/// (hermegauss).
/// </summary>
internal static class NormalNodes
{
    private static readonly double[] Positive =
        [0.44440300194413895, 1.3403751971516167, 2.259464451000799, 3.2237098287700974, 4.2718258479322815, 5.500901704467748];

    private static readonly double[] OfPositive =
    [
        0.32166436151282995, 0.14696704804532995, 0.029116687912364173, 0.0022033806875332, 4.837184922590644e-05, 1.4999271676371623e-07,
    ];

    /// <summary>The points.</summary>
    public static ReadOnlySpan<double> Points => AllPoints;

    /// <summary>Their weights, which add up to 1.</summary>
    public static ReadOnlySpan<double> Weights => AllWeights;

    /// <summary>The number of points.</summary>
    public const int Count = 12;

    private static readonly double[] AllPoints = [.. Positive.Select(x => -x), .. Positive];

    private static readonly double[] AllWeights = [.. OfPositive, .. OfPositive];
}
