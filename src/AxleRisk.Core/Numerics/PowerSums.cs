namespace AxleRisk.Core.Numerics;

/// <summary>Count, sum and sum of squares: enough for a mean and its standard error, and joined by adding.</summary>
/// <param name="Count">The number of values.</param>
/// <param name="Sum">Their sum.</param>
/// <param name="SumOfSquares">The sum of their squares.</param>
internal readonly record struct PowerSums(long Count, double Sum, double SumOfSquares)
{
    private const double TwoSided95 = 1.959963984540054;

    /// <summary>The mean.</summary>
    public double Mean => Sum / Count;

    /// <summary>The standard error of the mean.</summary>
    public double StandardError
    {
        get
        {
            double variance = Math.Max(0, (SumOfSquares / Count) - (Mean * Mean)) * Count / Math.Max(1, Count - 1);
            return Math.Sqrt(variance / Count);
        }
    }

    /// <summary>These sums with one more value.</summary>
    public PowerSums Plus(double value) => new(Count + 1, Sum + value, SumOfSquares + (value * value));

    /// <summary>These sums and those of other values.</summary>
    public PowerSums Plus(PowerSums other) => new(Count + other.Count, Sum + other.Sum, SumOfSquares + other.SumOfSquares);

    /// <summary>The mean with its 95 % interval (normal approximation).</summary>
    public Interval MeanInterval() => Count < 2
        ? new(Mean, double.NaN, double.NaN)
        : new(Mean, Mean - (TwoSided95 * StandardError), Mean + (TwoSided95 * StandardError));

    /// <summary>
    /// The mean of values between 0 and 1 with its 95 % interval, normal on the scale of the logarithm: it never reaches
    /// below 0 and leans upward, as the error of a small probability does.
    /// </summary>
    public Interval PositiveMeanInterval()
    {
        if (Count < 2 || !(Mean > 0))
        {
            // One value says nothing of the spread.
            return new Interval(Mean, 0, Count < 2 ? 1 : Mean);
        }

        double spread = Math.Exp(TwoSided95 * StandardError / Mean);
        return new Interval(Mean, Mean / spread, Math.Min(1, Mean * spread));
    }
}
