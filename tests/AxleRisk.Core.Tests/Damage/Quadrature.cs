namespace AxleRisk.Core.Tests.Damage;

/// <summary>Slow, plain integration to check closed forms with.</summary>
internal static class Quadrature
{
    /// <summary>
    /// Trapezoid rule over ln x: for smooth integrands that vanish at both ends it converges faster than any power of the step.
    /// </summary>
    public static double OverLog(Func<double, double> g, double from, double to, int points)
    {
        double step = Math.Log(to / from) / (points - 1);
        double sum = 0;
        for (int i = 0; i < points; i++)
        {
            double x = from * Math.Exp(step * i);
            sum += g(x) * x * (i == 0 || i == points - 1 ? step / 2 : step);
        }
        return sum;
    }

    /// <summary>Simpson's rule with an even number of intervals.</summary>
    public static double Simpson(Func<double, double> g, double from, double to, int intervals)
    {
        double h = (to - from) / intervals;
        double sum = g(from) + g(to);
        for (int i = 1; i < intervals; i++)
        {
            sum += (i % 2 == 0 ? 2 : 4) * g(from + i * h);
        }

        return sum * h / 3;
    }
}
