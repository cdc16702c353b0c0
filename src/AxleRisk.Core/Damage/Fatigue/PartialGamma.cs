using MathNet.Numerics;

namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>
/// The incomplete gamma functions of the damage integrals: finite sums of exp and erfc where a is a multiple of one half, which is so for
/// whole slopes; otherwise the general function.
/// </summary>
internal static class PartialGamma
{
    // exp(-x) is 0 beyond.
    private const double Beyond = 745.2;

    private const double LargestSummed = 40;

    private static readonly double SqrtPi = Math.Sqrt(Math.PI);

    /// <summary>The upper incomplete gamma function, integral of t^(a-1) e^-t from x on, a at least 1/2, x not negative.</summary>
    public static double Upper(double a, double x)
    {
        if (x > Beyond)
        {
            return 0;
        }

        if (a > LargestSummed)
        {
            return UpperGeneral(a, x);
        }

        if (a == Math.Floor(a))
        {
            return Raise(1, Math.Exp(-x), x * Math.Exp(-x), a, x);
        }

        double root = Math.Sqrt(x);
        return 2 * a == Math.Floor(2 * a)
            ? Raise(0.5, SqrtPi * SpecialFunctions.Erfc(root), root * Math.Exp(-x), a, x)
            : UpperGeneral(a, x);
    }

    /// <summary>The same for any a, by the regularised function.</summary>
    internal static double UpperGeneral(double a, double x) =>
        x > Beyond ? 0 : SpecialFunctions.Gamma(a) * SpecialFunctions.GammaUpperRegularized(a, x);

    /// <summary>
    /// The lower incomplete gamma function over x^(a-1), for x below about 1, by its series (DLMF 8.7.1): so divided, it serves where x is
    /// too small for its power, and a difference from the complete function would have no digits left.
    /// </summary>
    public static double LowerScaled(double a, double x)
    {
        double term = 1 / a;
        double sum = term;
        for (double k = a + 1; term > 1e-17 * sum; k++)
        {
            term *= x / k;
            sum += term;
        }
        return x * Math.Exp(-x) * sum;
    }

    // Gamma(k + 1, x) = k Gamma(k, x) + x^k e^-x (DLMF 8.8.2): all terms positive, so it is stable upward.
    private static double Raise(double from, double gamma, double power, double to, double x)
    {
        for (double k = from; k < to; k++)
        {
            gamma = k * gamma + power;
            power *= x;
        }
        return gamma;
    }
}
