using MathNet.Numerics;

namespace AxleRisk.Core.Numerics;

/// <summary>
/// Both tails of the regularised incomplete beta function and their inverse, by the continued fraction DLMF 8.17.22;
/// relative error of the smaller tail about 1e-15 (a + b), at least 1e-14.
/// </summary>
internal static class IncompleteBeta
{
    private const double Precision = 3e-16;
    private const double Tiny = 1e-300;
    private const int MaximumTerms = 1_000_000;

    /// <summary>The tails at x.</summary>
    /// <param name="a">First shape, above 0.</param>
    /// <param name="b">Second shape, above 0.</param>
    /// <param name="x">The point, in (0, 1).</param>
    /// <param name="y">1 - x, given apart so that it keeps its digits near x = 1.</param>
    public static Tails At(double a, double b, double x, double y) => At(a, b, x, y, Math.Log(x), Math.Log(y));

    /// <summary>ln(x / (1 - x)) of the quantile: I_x(a, b) = lower = 1 - upper; the smaller of the two is the one that counts.</summary>
    public static double LogitQuantile(double a, double b, double lower, double upper)
    {
        var tail = new Tail(a, b, lower <= upper);
        return LogConcaveTail.Solve(tail, Math.Log(Math.Min(lower, upper)), Start(a, b, lower, upper));
    }

    /// <summary>x^a y^b / B(a, b).</summary>
    public static double Slope(double a, double b, double lnX, double lnY) =>
        Math.Exp((a * lnX) + (b * lnY) - SpecialFunctions.BetaLn(a, b));

    /// <summary>The logit is nearly normal where both shapes are above 1; otherwise the leading term of the tail asked for.</summary>
    private static double Start(double a, double b, double lower, double upper)
    {
        double middle = Math.Log(a / b);
        if (Math.Min(a, b) >= 1)
        {
            double z = lower <= upper ? StandardNormal.Quantile(lower) : -StandardNormal.Quantile(upper);
            return middle + (z * Math.Sqrt((1 / a) + (1 / b)));
        }

        double logBeta = SpecialFunctions.BetaLn(a, b);
        return lower <= upper
            ? Math.Min(middle, (Math.Log(lower * a) + logBeta) / a)
            : Math.Max(middle, -(Math.Log(upper * b) + logBeta) / b);
    }

    private static Tails At(double a, double b, double x, double y, double lnX, double lnY)
    {
        double slope = Slope(a, b, lnX, lnY);
        if (x < (a + 1) / (a + b + 2))
        {
            double lower = Math.Min(1, slope * Fraction(a, b, x) / a);
            return new Tails(lower, 1 - lower, slope);
        }

        double upper = Math.Min(1, slope * Fraction(b, a, y) / b);
        return new Tails(1 - upper, upper, slope);
    }

    /// <summary>
    /// The continued fraction, <c>I_x(a, b) = x^a y^b / (a B(a, b))</c> times it; Lentz's method as modified by Thompson and
    /// Barnett, two terms a turn.
    /// </summary>
    public static double Fraction(double a, double b, double x)
    {
        double c = 1;
        double d = 1 / NonZero(1 - ((a + b) * x / (a + 1)));
        double h = d;
        double change = 0;
        for (int m = 1; Math.Abs(change - 1) > Precision && m < MaximumTerms; m++)
        {
            double even = m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m)));
            d = 1 / NonZero(1 + (even * d));
            c = NonZero(1 + (even / c));
            h *= c * d;
            double odd = -(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            d = 1 / NonZero(1 + (odd * d));
            c = NonZero(1 + (odd / c));
            change = c * d;
            h *= change;
        }

        return h;
    }

    private static double NonZero(double x) => Math.Abs(x) < Tiny ? Tiny : x;

    private readonly struct Tail(double a, double b, bool isLower) : ILogTail
    {
        public int Direction => isLower ? 1 : -1;

        public (double Log, double Slope, double Bend) At(double u)
        {
            double rest = -LogExp.LogP1(Math.Exp(-Math.Abs(u)));
            double lnX = rest + Math.Min(u, 0);
            double lnY = rest - Math.Max(u, 0);
            double x = Math.Exp(lnX);
            double y = Math.Exp(lnY);
            Tails tails = IncompleteBeta.At(a, b, x, y, lnX, lnY);
            double slope = isLower ? tails.Slope / tails.Lower : -tails.Slope / tails.Upper;
            return (Math.Log(isLower ? tails.Lower : tails.Upper), slope, (a * y) - (b * x) - slope);
        }
    }
}
