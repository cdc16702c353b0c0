using System.Collections.Immutable;

namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>
/// An S-N curve of straight lines, <c>log10 N = log10 a - m log10 S</c>, S the stress range in MPa, N cycles, that meet at knees.
/// </summary>
public sealed record SnCurve
{
    private readonly ImmutableArray<SnLine> lines = [];
    private readonly double cutOffMPa;

    /// <summary>The catalogue's name as in a scenario file.</summary>
    public required string Catalogue { get; init; }

    /// <summary>The category's name within its catalogue.</summary>
    public required string Category { get; init; }

    /// <summary>What the weld lives in.</summary>
    public string Environment { get; init; } = Surroundings.Air;

    /// <summary>The lines, from the greatest ranges down: at least one, each meeting the next at a smaller range than the last.</summary>
    public required ImmutableArray<SnLine> Lines
    {
        get => lines;
        init
        {
            lines = value;
            KneesMPa = [.. value.Zip(value.Skip(1), (line, next) => line.MeetsMPa(next))];
            Constants = new(lines, KneesMPa, cutOffMPa);
        }
    }

    /// <summary>The range below which a cycle does no damage, MPa, not above the last knee; 0 where the standard has none.</summary>
    public double CutOffMPa
    {
        get => cutOffMPa;
        init
        {
            cutOffMPa = value;
            Constants = new(lines, KneesMPa, value);
        }
    }

    /// <summary>The thickness up to which no correction applies, mm.</summary>
    public double ThicknessReferenceMm { get; init; } = 25;

    /// <summary>Exponent of the thickness correction on stress; 0 for none.</summary>
    public double ThicknessExponent { get; init; }

    /// <summary>What to add to the intercepts to get from the design curve to the mean curve; 0 on a mean curve.</summary>
    public required double DesignToMeanLog10 { get; init; }

    /// <summary>The standard, edition and table, and what of it is an assumption.</summary>
    public required string Source { get; init; }

    /// <summary>The mean curve: all intercepts shifted. Knees and cut-off keep their stress.</summary>
    public SnCurve Mean => this with
    {
        Lines = [.. Lines.Select(l => l with { Log10A = l.Log10A + DesignToMeanLog10 })],
        DesignToMeanLog10 = 0,
    };

    /// <summary>The stress ranges at which one line meets the next, MPa, from the greatest down; none of a curve of one slope.</summary>
    public ImmutableArray<double> KneesMPa { get; private init; } = [];

    /// <summary>The curve as the damage integrals want it.</summary>
    internal SnConstants Constants { get; private init; } = new([], [], 0);

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

        int line = 0;
        while (line < KneesMPa.Length && rangeMPa < KneesMPa[line])
        {
            line++;
        }

        return Lines[line].Cycles(rangeMPa);
    }

    /// <summary>The factor on stress for a thickness, 1 up to the reference: <c>(max(t, tref) / tref)^k</c>.</summary>
    /// <param name="thicknessMm">Thickness t, mm.</param>
    public double ThicknessFactor(double thicknessMm) =>
        ThicknessExponent == 0 ? 1 : Math.Pow(Math.Max(thicknessMm, ThicknessReferenceMm) / ThicknessReferenceMm, ThicknessExponent);
}
