using AxleRisk.Core.Distributions;
using MathNet.Numerics.RootFinding;

namespace AxleRisk.App.Screens.Editing;

/// <summary>The member of another family with the same median and the same width between its 5 and 95 % points.</summary>
internal static class SpreadFit
{
    /// <summary>The probabilities whose distance is kept.</summary>
    public const double Low = 0.05, High = 0.95;

    private static readonly string[] Bounded = ["triangular", "pert", "beta"];

    /// <summary>The member of a family; null where it has none with this median and width.</summary>
    /// <param name="family">The family.</param>
    /// <param name="source">The distribution whose median and width are kept, and its skew where the family has room for it.</param>
    public static Distribution? Of(string family, Distribution source)
    {
        (double low, double median, double high) = (source.Quantile(Low), source.Median, source.Quantile(High));
        if (!(high > low && double.IsFinite(high - low)))
        {
            return null;
        }

        try
        {
            return Bounded.Contains(family) ? OfBounded(family, low, median, high) : OfTwoQuantiles(family, median, high - low);
        }
        catch (DistributionException)
        {
            return null;
        }
    }

    // The 95 % point is moved until the width is right: the 5 % point follows from the median and it. The width grows with it;
    // where the family has no member so narrow, it is too near.
    private static Distribution? OfTwoQuantiles(string family, double median, double width)
    {
        Distribution At(double part) =>
            QuantileFit.Of(family, new StatedQuantile(0.5, median), new StatedQuantile(High, median + (part * width)));
        double Excess(double part)
        {
            try
            {
                return At(part) is var d ? ((d.Quantile(High) - d.Quantile(Low)) / width) - 1 : 0;
            }
            catch (DistributionException)
            {
                return -1;
            }
        }

        return Zero(Excess, 1e-3, 0.98) is double part && Math.Abs(Excess(part)) < 1e-6 ? At(part) : null;
    }

    // The mode is moved until the skew is right, as far as it can go; then the whole is scaled and shifted.
    private static Distribution OfBounded(string family, double low, double median, double high)
    {
        double skew = (high - median) / (high - low);
        double Excess(double mode) => Unit(family, mode) is var u ? ((u.Quantile(High) - u.Median) / (u.Quantile(High) - u.Quantile(Low)))
            - skew : double.NaN;
        double mode = Zero(Excess, 0, 1) ?? (Excess(0) < 0 ? 0 : 1);
        Distribution unit = Unit(family, mode);
        double scale = (high - low) / (unit.Quantile(High) - unit.Quantile(Low));
        double from = median - (scale * unit.Median);
        return family switch
        {
            "triangular" => new Triangular(from, from + (scale * mode), from + scale),
            "pert" => new Pert(from, from + (scale * mode), from + scale, 4),
            _ => new ScaledBeta(1 + (4 * mode), 5 - (4 * mode), from, from + scale),
        };
    }

    private static Distribution Unit(string family, double mode) => family switch
    {
        "triangular" => new Triangular(0, mode, 1),
        "pert" => new Pert(0, mode, 1, 4),
        _ => new ScaledBeta(1 + (4 * mode), 5 - (4 * mode), 0, 1),
    };

    // Brent's method takes no NaN; where a value is none, there is no member, as where one is too narrow.
    private static double? Zero(Func<double, double> excess, double from, double to) => Brent.TryFindRoot(
        x => excess(x) is var e && double.IsNaN(e) ? -1 : e, from, to, 1e-14, 200, out double zero) ? zero : null;
}
