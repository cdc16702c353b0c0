namespace AxleRisk.Core.Numerics;

/// <summary>
/// A sum of numbers of moderate size in fixed point: adding is exact, so that the order, and with it the number of threads
/// and parts, does not show in a single digit. Each addend is rounded once, to 2^-80.
/// </summary>
/// <param name="Units">The sum in units of 2^-80.</param>
public readonly record struct ExactSum(Int128 Units)
{
    private const double UnitsPerOne = 1208925819614629174706176.0; // 2^80

    /// <summary>The sum as a number.</summary>
    public double Value => (double)Units / UnitsPerOne;

    /// <summary>This sum and one more addend, at most 2^40 in size; the total stays below 2^46.</summary>
    public ExactSum Plus(double addend) => new(Units + (Int128)(addend * UnitsPerOne));

    /// <summary>The sum of two sums.</summary>
    public ExactSum Plus(ExactSum other) => new(Units + other.Units);
}
