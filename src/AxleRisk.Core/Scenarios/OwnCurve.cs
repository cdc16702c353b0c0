using System.Collections.Immutable;

namespace AxleRisk.Core.Scenarios;

/// <summary>
/// An S-N curve that the scenario states itself: lines <c>log10 N = log10 a - m log10 S</c>, S in MPa, that meet at knees.
/// </summary>
/// <param name="Slopes">The slopes m, from the greatest ranges down; one to three.</param>
/// <param name="Log10A">The intercepts log10 a, as many, of the curve as it is stated.</param>
/// <param name="Source">Where it comes from, in the author's words; printed with every answer.</param>
public sealed record OwnCurve(ImmutableArray<double> Slopes, ImmutableArray<double> Log10A, string Source)
{
    /// <summary>The most lines.</summary>
    public const int MostLines = 3;

    /// <summary>The range below which a cycle does no damage, MPa, not above the last knee; 0 for none.</summary>
    public double CutOffMPa { get; init; }

    /// <summary>Standard deviation of log10 N about the mean curve.</summary>
    public required double StandardDeviation { get; init; }

    /// <summary>How many standard deviations the stated curve lies below the mean; 0 where it is the mean.</summary>
    public double DeviationsBelowMean { get; init; }

    /// <summary>The thickness up to which no correction applies, mm.</summary>
    public double ThicknessReferenceMm { get; init; } = 25;
}
