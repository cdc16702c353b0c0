namespace AxleRisk.Core.Analyses.Fits;

/// <summary>
/// A measured value, or what is known of it: that it lies above <paramref name="Low"/> and at or below <paramref name="High"/>.
/// Both are the same where it is known; <paramref name="Low"/> is negative infinity where it is known to lie below something,
/// <paramref name="High"/> infinite where above.
/// </summary>
/// <param name="Low">The lower end, in the unit of the quantity.</param>
/// <param name="High">The upper end, at or above the lower.</param>
/// <param name="Count">How many such there are, above 0.</param>
public readonly record struct Observation(double Low, double High, double Count)
{
    /// <summary>Whether the value is known.</summary>
    public bool IsExact => Low == High;

    /// <summary>A known value.</summary>
    public static Observation At(double value, double count = 1) => new(value, value, count);
}
