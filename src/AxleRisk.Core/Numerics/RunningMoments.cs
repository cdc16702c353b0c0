namespace AxleRisk.Core.Numerics;

/// <summary>
/// Count, mean and variance of a stream of numbers, updated one by one (Welford 1962) and merged from parts (Chan, Golub,
/// LeVeque 1979). Merging the same parts in the same order gives the same bits.
/// </summary>
internal struct RunningMoments
{
    private double sumOfSquares; // about the mean

    /// <summary>How many numbers were added.</summary>
    public long Count { readonly get; private set; }

    /// <summary>Their mean; 0 without numbers.</summary>
    public double Mean { readonly get; private set; }

    /// <summary>The unbiased variance; NaN below two numbers.</summary>
    public readonly double Variance => Count > 1 ? sumOfSquares / (Count - 1) : double.NaN;

    /// <summary>The square root of the variance; NaN below two numbers.</summary>
    public readonly double StandardDeviation => Math.Sqrt(Variance);

    /// <summary>The standard error of the mean of independent numbers; NaN below two numbers.</summary>
    public readonly double StandardError => Math.Sqrt(Variance / Count);

    /// <summary>Adds a number.</summary>
    public void Add(double x)
    {
        Count++;
        double delta = x - Mean;
        Mean += delta / Count;
        sumOfSquares += delta * (x - Mean);
    }

    /// <summary>Adds all numbers of another part.</summary>
    public void Merge(RunningMoments other)
    {
        if (other.Count == 0)
        {
            return;
        }

        long total = Count + other.Count;
        double delta = other.Mean - Mean;
        double weight = (double)other.Count / total;
        sumOfSquares += other.sumOfSquares + delta * delta * Count * weight;
        Mean += delta * weight;
        Count = total;
    }
}
