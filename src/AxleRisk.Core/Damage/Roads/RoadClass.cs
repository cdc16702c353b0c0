using System.Collections.Immutable;

namespace AxleRisk.Core.Damage.Roads;

/// <summary>A roughness class of ISO 8608:2016, table C.2: displacement spectral density at 0.1 cycles/m.</summary>
/// <param name="Letter">A (smoothest) to H.</param>
/// <param name="MeanM3">Geometric mean of the class, m^3. For A and H, which are open on one side, the value in use for simulation.</param>
/// <param name="LowerM3">Lower limit, half the mean, m^3; 0 for A.</param>
/// <param name="UpperM3">Upper limit, twice the mean, m^3; infinite for H.</param>
public sealed record RoadClass(char Letter, double MeanM3, double LowerM3, double UpperM3)
{
    /// <summary>All classes, smoothest first.</summary>
    public static ImmutableArray<RoadClass> All { get; } = [.. "ABCDEFGH".Select(Make)];

    /// <summary>The class of a letter, in either case; null if there is none.</summary>
    public static RoadClass? Find(char letter) => All.FirstOrDefault(c => c.Letter == char.ToUpperInvariant(letter));

    private static RoadClass Make(char letter)
    {
        double mean = 16e-6 * Math.Pow(4, letter - 'A');
        return new(letter, mean, letter == 'A' ? 0 : mean / 2, letter == 'H' ? double.PositiveInfinity : 2 * mean);
    }
}
