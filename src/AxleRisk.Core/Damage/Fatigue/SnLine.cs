namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>One straight line of an S-N curve: <c>log10 N = log10 a - m log10 S</c>.</summary>
/// <param name="Slope">The slope m, above 0.</param>
/// <param name="Log10A">The intercept log10 a, S in MPa.</param>
public readonly record struct SnLine(double Slope, double Log10A)
{
    /// <summary>The line through two points of a curve.</summary>
    /// <param name="cycles">Cycles at the one.</param>
    /// <param name="rangeMPa">Its stress range, MPa.</param>
    /// <param name="otherCycles">Cycles at the other, more.</param>
    /// <param name="otherRangeMPa">Its stress range, MPa, smaller.</param>
    public static SnLine Through(double cycles, double rangeMPa, double otherCycles, double otherRangeMPa)
    {
        double slope = Math.Log(otherCycles / cycles) / Math.Log(rangeMPa / otherRangeMPa);
        return new(slope, Math.Log10(cycles) + (slope * Math.Log10(rangeMPa)));
    }

    /// <summary>Cycles to failure on the line.</summary>
    /// <param name="rangeMPa">Stress range, MPa.</param>
    public double Cycles(double rangeMPa) => Math.Pow(10, Log10A - Slope * Math.Log10(rangeMPa));

    /// <summary>The stress range, MPa, at which the line reaches a number of cycles.</summary>
    /// <param name="cycles">Cycles.</param>
    public double RangeMPa(double cycles) => Math.Pow(10, (Log10A - Math.Log10(cycles)) / Slope);

    /// <summary>The stress range at which this line meets the next, MPa.</summary>
    /// <param name="next">A line of another slope.</param>
    public double MeetsMPa(SnLine next) => Math.Pow(10, (next.Log10A - Log10A) / (next.Slope - Slope));
}
