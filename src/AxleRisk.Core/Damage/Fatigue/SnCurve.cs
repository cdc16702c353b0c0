namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>
/// An S-N curve of two slopes that meet at a knee: <c>log10 N = log10 a - m log10 S</c>, S the stress range in MPa, N cycles.
/// Above and below the knee are meant in stress.
/// </summary>
public sealed record SnCurve
{
    /// <summary>The catalogue's name as in a scenario file.</summary>
    public required string Catalogue { get; init; }

    /// <summary>The category's name within its catalogue.</summary>
    public required string Category { get; init; }

    /// <summary>Slope m at ranges above the knee.</summary>
    public required double SlopeAboveKnee { get; init; }

    /// <summary>Intercept log10 a at ranges above the knee.</summary>
    public required double Log10AAboveKnee { get; init; }

    /// <summary>Slope m at ranges below the knee. Equal to the other slope, with an equal intercept, for a curve without a knee.</summary>
    public required double SlopeBelowKnee { get; init; }

    /// <summary>Intercept log10 a at ranges below the knee.</summary>
    public required double Log10ABelowKnee { get; init; }

    /// <summary>The range below which a cycle does no damage, MPa, not above the knee; 0 where the standard has none.</summary>
    public double CutOffMPa { get; init; }

    /// <summary>The thickness up to which no correction applies, mm.</summary>
    public double ThicknessReferenceMm { get; init; } = 25;

    /// <summary>Exponent of the thickness correction on stress; 0 for none.</summary>
    public double ThicknessExponent { get; init; }

    /// <summary>What to add to both intercepts to get from the design curve to the mean curve; 0 on a mean curve.</summary>
    public required double DesignToMeanLog10 { get; init; }

    /// <summary>The standard, edition and table, and what of it is an assumption.</summary>
    public required string Source { get; init; }

    /// <summary>The mean curve: both intercepts shifted. Knee and cut-off keep their stress.</summary>
    public SnCurve Mean => this with
    {
        Log10AAboveKnee = Log10AAboveKnee + DesignToMeanLog10,
        Log10ABelowKnee = Log10ABelowKnee + DesignToMeanLog10,
        DesignToMeanLog10 = 0,
    };

    /// <summary>The stress range at the knee, MPa: where the two lines cross. On a curve of one slope it is the cut-off.</summary>
    public double KneeMPa => SlopeAboveKnee == SlopeBelowKnee
        ? CutOffMPa
        : Math.Pow(10, (Log10ABelowKnee - Log10AAboveKnee) / (SlopeBelowKnee - SlopeAboveKnee));

    /// <summary>Cycles to failure at a constant stress range; infinite below the cut-off.</summary>
    /// <param name="rangeMPa">Stress range, MPa, thickness correction included.</param>
    /// <exception cref="ArgumentOutOfRangeException">The range is negative or not a number.</exception>
    public double CyclesToFailure(double rangeMPa)
    {
        if (!(rangeMPa >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(rangeMPa), rangeMPa, "A stress range is not negative");
        }

        if (rangeMPa == 0 || rangeMPa < CutOffMPa)
        {
            return double.PositiveInfinity;
        }

        return rangeMPa >= KneeMPa
            ? Math.Pow(10, Log10AAboveKnee - SlopeAboveKnee * Math.Log10(rangeMPa))
            : Math.Pow(10, Log10ABelowKnee - SlopeBelowKnee * Math.Log10(rangeMPa));
    }

    /// <summary>The factor on stress for a thickness, 1 up to the reference: <c>(max(t, tref) / tref)^k</c>.</summary>
    /// <param name="thicknessMm">Thickness t, mm.</param>
    public double ThicknessFactor(double thicknessMm) =>
        ThicknessExponent == 0 ? 1 : Math.Pow(Math.Max(thicknessMm, ThicknessReferenceMm) / ThicknessReferenceMm, ThicknessExponent);
}
