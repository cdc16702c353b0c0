namespace AxleRisk.Core.Numerics;

/// <summary>An estimate with its interval, in the estimate's unit.</summary>
/// <param name="Estimate">The estimate.</param>
/// <param name="Low">The interval's lower end.</param>
/// <param name="High">The interval's upper end.</param>
public readonly record struct Interval(double Estimate, double Low, double High)
{
    /// <summary>The interval with its ends cut to where the quantity can lie.</summary>
    public Interval Within(double least, double most) => new(Estimate, Math.Clamp(Low, least, most), Math.Clamp(High, least, most));
}
