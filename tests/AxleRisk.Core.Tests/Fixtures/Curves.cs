using AxleRisk.Core.Damage.Fatigue;

namespace AxleRisk.Core.Tests.Fixtures;

/// <summary>S-N curves made by hand.</summary>
internal static class Curves
{
    /// <summary>Damage S^m a cycle at every range.</summary>
    public static SnConstants OneSlope(double slope) => new([new(slope, 1, 0, double.PositiveInfinity)]);

    /// <summary>Two slopes, each with the damage of a cycle of 1 MPa.</summary>
    public static SnConstants TwoSlopes(double above, double damageAbove, double below, double damageBelow, double knee, double cutOff) =>
        new([new(above, damageAbove, knee, double.PositiveInfinity), new(below, damageBelow, cutOff, knee)]);

    /// <summary>A mean curve of any lines.</summary>
    public static SnCurve Of(double cutOffMPa, params SnLine[] lines) => new()
    {
        Catalogue = "own",
        Category = "made by hand",
        Lines = [.. lines],
        CutOffMPa = cutOffMPa,
        DesignToMeanLog10 = 0,
        Source = "a test",
    };
}
