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
    /// <summary>I_x(a, b) for a, b above 0; <paramref name="y"/> is 1 - x, given apart so that neither end loses digits.</summary>
    public static double Lower(double a, double b, double x, double y)
    {
        if (x <= 0 || y <= 0)
        {
            return x <= 0 ? 0 : 1;
        }

        return x <= a / (a + b) ? Tail(a, b, x, y) : 1 - Tail(b, a, y, x);
    }

    /// <summary>1 - I_x(a, b).</summary>
    public static double Upper(double a, double b, double x, double y) => Lower(b, a, y, x);

    // Below the mean the continued fraction takes of the order of sqrt(a + b) terms at worst.
    private static double Tail(double a, double b, double x, double y) =>
        b / (a + b) * BinomialTerm.Density(a, a + b, x, y) * IncompleteBeta.Fraction(a, b, x); // x^a y^b / (a B(a, b)) times it
}
