namespace AxleRisk.Core.Numerics;

/// <summary>
/// Whether a mean of small probabilities is carried by a few of its terms. Then the rows that would matter most were not
/// drawn, and neither the mean nor the spread of the terms says anything of them: what is left is a bound.
/// </summary>
internal static class FewTerms
{
    /// <summary>Kish's effective number of terms below which a mean is not believed.</summary>
    private const double Least = 50;

    /// <summary>Above this a mean of probabilities has more rows behind it than it seems: each term is at most 1.</summary>
    private const double Rare = 1e-3;

    /// <summary>Whether few terms carry the sum; of small samples, fewer than half of all.</summary>
    /// <param name="sums">The sums of the terms, each from 0 to 1.</param>
    /// <param name="probability">The probability that they make.</param>
    public static bool Carry(PowerSums sums, double probability) =>
        probability < Rare && !(sums.SumOfSquares > 0 && sums.Sum * sums.Sum / sums.SumOfSquares >= Math.Min(Least, sums.Count / 2.0));

    /// <summary>
    /// No estimate, and as the upper end what the rows drawn allow: the upper end of their own interval, and all of the region
    /// that none of them met, at most 3 / n with 95 % confidence (rule of three; Hanley and Lippman-Hand 1983).
    /// </summary>
    /// <param name="ofRows">The interval of the rows drawn.</param>
    /// <param name="rows">Their number, or that of those that could fail.</param>
    public static Interval Bound(Interval ofRows, double rows) => new(double.NaN, 0, Math.Min(1, ofRows.High + (3.0 / rows)));
}
