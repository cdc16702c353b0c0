namespace AxleRisk.Core.Numerics;

/// <summary>
/// The tails of the beta distribution (the regularised incomplete beta function), each accurate where it is small, for
/// parameters up to 1e9; relative error about 1e-16 times the terms summed, 1e-12 at 1e8.
/// </summary>
/// <remarks>
/// MathNet's stops after 140 terms and takes its factor from logarithms of gamma functions, which lose seven digits at 1e8.
/// </remarks>
internal static class BetaTail
{
    private const double Tiny = 1e-300;
    private const double Precision = 4e-16;
    private const int MaximumTerms = 1_000_000;

    /// <summary>I_x(a, b) for a, b above 0; <paramref name="y"/> is 1 - x, given apart so that neither end loses digits.</summary>
    public static double Lower(double a, double b, double x, double y)
    {
        if (x <= 0 || y <= 0)
            return x <= 0 ? 0 : 1;
        return x <= a / (a + b) ? Tail(a, b, x, y) : 1 - Tail(b, a, y, x);
    }

    /// <summary>1 - I_x(a, b).</summary>
    public static double Upper(double a, double b, double x, double y) => Lower(b, a, y, x);

    // The continued fraction 26.5.8 of Abramowitz and Stegun by the modified method of Lentz; below the mean it takes of the
    // order of sqrt(a + b) terms at worst.
    private static double Tail(double a, double b, double x, double y)
    {
        double factor = b / (a + b) * BinomialTerm.Density(a, a + b, x, y); // x^a y^b / (a B(a, b))
        double c = 1, d = 1 - (a + b) * x / (a + 1);
        d = 1 / (Math.Abs(d) < Tiny ? Tiny : d);
        double fraction = d;
        for (int m = 1; m < MaximumTerms; m++)
        {
            double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
            Step(even, ref c, ref d);
            fraction *= c * d;
            double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
            Step(odd, ref c, ref d);
            fraction *= c * d;
            if (Math.Abs(c * d - 1) < Precision)
                break;
        }

        return factor * fraction;
    }

    private static void Step(double coefficient, ref double c, ref double d)
    {
        d = 1 + coefficient * d;
        d = 1 / (Math.Abs(d) < Tiny ? Tiny : d);
        c = 1 + coefficient / c;
        c = Math.Abs(c) < Tiny ? Tiny : c;
    }
}
