using MathNet.Numerics.Integration;

namespace AxleRisk.Core.Numerics;

/// <summary>The distribution of two standard normal variables with a correlation.</summary>
internal static class BivariateNormal
{
    private const double TwoPi = 2 * Math.PI;

    // There the normal probability is 0 or 1 to the last bit, so infinite limits need no case of their own.
    private const double Beyond = 40;

    private static readonly GaussLegendreRule Rule = new(-1, 1, 20);
    private static readonly double[] Nodes = Rule.Abscissas;
    private static readonly double[] Weights = Rule.Weights;

    /// <summary>
    /// P(X &lt;= h, Y &lt;= k), by the method of Genz (2004, Numerical computation of rectangular bivariate and trivariate
    /// normal and t probabilities, Statistics and Computing 14) with 20 nodes throughout; absolute error near 1e-15.
    /// </summary>
    /// <param name="h">The first limit.</param>
    /// <param name="k">The second limit.</param>
    /// <param name="rho">The correlation, -1 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The correlation is not in -1 to 1.</exception>
    public static double Cumulative(double h, double k, double rho)
    {
        if (!(rho >= -1 && rho <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(rho), rho, "a correlation lies in -1 to 1");
        }

        if (double.IsNaN(h) || double.IsNaN(k))
        {
            return double.NaN;
        }

        h = Math.Clamp(h, -Beyond, Beyond);
        k = Math.Clamp(k, -Beyond, Beyond);
        double p = Math.Abs(rho) < 0.925 ? Moderate(h, k, rho) : Strong(-h, -k, rho);
        return Math.Clamp(p, 0, 1);
    }

    // Plackett's integral over the correlation, from 0, in its arcsine.
    private static double Moderate(double h, double k, double rho)
    {
        double half = (h * h + k * k) / 2, angle = Math.Asin(rho) / 2, sum = 0;
        for (int i = 0; i < Nodes.Length; i++)
        {
            double sine = Math.Sin(angle * (1 + Nodes[i]));
            sum += Weights[i] * Math.Exp((sine * h * k - half) / (1 - sine * sine));
        }

        return sum * angle / TwoPi + StandardNormal.Cumulative(h) * StandardNormal.Cumulative(k);
    }

    // P(X > h, Y > k): the integral from the correlation 1 or -1, its near-singular part taken out in closed form.
    private static double Strong(double h, double k, double rho)
    {
        if (rho < 0)
        {
            k = -k;
        }

        double integral = Math.Abs(rho) < 1 ? FromSingular(h, k, (1 - rho) * (1 + rho)) : 0;
        if (rho > 0)
        {
            return integral + StandardNormal.Upper(Math.Max(h, k));
        }

        if (h >= k)
        {
            return -integral;
        }

        return Between(h, k) - integral;
    }

    private static double FromSingular(double h, double k, double variance)
    {
        double hk = h * k, a = Math.Sqrt(variance), square = (h - k) * (h - k);
        double c = (4 - hk) / 8, d = (12 - hk) / 80;
        double closed = a * Math.Exp(-(square / variance + hk) / 2)
            * (1 - c * (square - variance) * (1 - d * square) / 3 + c * d * variance * variance);
        if (hk > -100)
        {
            double b = Math.Sqrt(square);
            closed -= Math.Exp(-hk / 2) * Math.Sqrt(TwoPi) * StandardNormal.Cumulative(-b / a) * b
                * (1 - c * square * (1 - d * square) / 3);
        }

        double sum = 0;
        for (int i = 0; i < Nodes.Length; i++)
        {
            double x = a / 2 * (1 + Nodes[i]), xs = x * x, exponent = -(square / xs + hk) / 2;
            if (exponent <= -100)
            {
                continue;
            }

            double root = Math.Sqrt(1 - xs);
            double exact = Math.Exp(-hk / 2 * xs / ((1 + root) * (1 + root))) / root;
            sum += Weights[i] * Math.Exp(exponent) * (1 + c * xs * (1 + 5 * d * xs) - exact);
        }

        return (a / 2 * sum - closed) / TwoPi;
    }

    // P(h < X < k), from the tail in which it loses no digits.
    private static double Between(double h, double k) => h < 0
        ? StandardNormal.Cumulative(k) - StandardNormal.Cumulative(h)
        : StandardNormal.Upper(h) - StandardNormal.Upper(k);
}
