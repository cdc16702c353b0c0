namespace AxleRisk.Core.Numerics;

/// <summary>A running sum with Neumaier's correction (1974): its error does not grow with the number of terms.</summary>
internal struct CompensatedSum
{
    private double sum;
    private double correction;

    /// <summary>The sum so far.</summary>
    public readonly double Value => sum + correction;

    /// <summary>The sum of <paramref name="terms"/>.</summary>
    public static double Of(ReadOnlySpan<double> terms)
    {
        CompensatedSum sum = default;
        foreach (double term in terms)
        {
            sum.Add(term);
        }

        return sum.Value;
    }

    /// <summary>Adds a term.</summary>
    public void Add(double term)
    {
        double next = sum + term;
        correction += Math.Abs(sum) >= Math.Abs(term) ? sum - next + term : term - next + sum;
        sum = next;
    }
}
