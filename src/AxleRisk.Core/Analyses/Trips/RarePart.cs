using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// A probability with its coefficient of variation, and what may come on top where no failure was found. Estimates of different legs
/// are independent; intervals are two-sided, 95 %.
/// </summary>
internal readonly record struct RarePart(double P, double Cov, double Unresolved)
{
    private const double TwoSided95 = 1.959963984540054;

    public static RarePart Of(RareEventResult answer) => answer.FailureFound
        ? new RarePart(answer.Probability.Estimate, answer.Cov,
            Math.Max(0, answer.Probability.High - (answer.Probability.Estimate * Math.Exp(TwoSided95 * answer.Cov))))
        : new RarePart(0, 0, answer.Probability.High);

    public static RarePart Of(Interval p) => new(p.Estimate, p.Low > 0 ? Math.Log(p.High / p.Low) / (2 * TwoSided95) : 0, 0);

    public static RarePart Sum(IEnumerable<RarePart?> parts)
    {
        RarePart[] known = [.. parts.OfType<RarePart>()];
        double sum = known.Sum(p => p.P);
        return new RarePart(sum, sum > 0 ? Math.Sqrt(known.Sum(p => Math.Pow(p.Cov * (p.P / sum), 2))) : 0, known.Sum(p => p.Unresolved));
    }

    /// <summary>The ratio to another, independent one; normal on the scale of the logarithm.</summary>
    public Interval Over(RarePart whole)
    {
        double factor = Math.Exp(TwoSided95 * Math.Sqrt((Cov * Cov) + (whole.Cov * whole.Cov)));
        double ratio = P / whole.P;
        return new Interval(P > 0 ? ratio : double.NaN, ratio / factor, Math.Min(1, (ratio * factor) + (Unresolved / whole.P)));
    }

    /// <summary>The share of a sum that this is a part of: the rest is independent of it.</summary>
    public Interval ShareOf(RarePart sum)
    {
        if (!(sum.P > 0))
        {
            return new Interval(double.NaN, double.NaN, double.NaN);
        }

        double share = P / sum.P;
        double others = Math.Sqrt(Math.Max(0, (sum.Cov * sum.Cov) - (share * share * Cov * Cov)));
        double half = TwoSided95 * share * Math.Sqrt(Math.Pow((1 - share) * Cov, 2) + (others * others));
        return new Interval(share, share - half, share + half + (Unresolved / sum.P)).Within(0, 1);
    }
}
