namespace AxleRisk.Core.Numerics;

/// <summary>
/// ln(1 + x) and e^x - 1 without the cancellation near 0, by Kahan's device: the rounding error of 1 + x cancels in the
/// quotient. Relative error about 1e-15. (Those of Math.NET 5 lose up to six digits between 1e-5 and 0.1.)
/// </summary>
internal static class LogExp
{
    /// <summary>ln(1 + x), x &gt;= -1.</summary>
    public static double LogP1(double x)
    {
        double rounded = 1 + x;
        return rounded == 1 ? x : rounded is 0 or double.PositiveInfinity ? Math.Log(rounded) : Math.Log(rounded) * (x / (rounded - 1));
    }

    /// <summary>e^x - 1.</summary>
    public static double ExpM1(double x)
    {
        double power = Math.Exp(x);
        return power == 1 ? x : Math.Abs(x) > 1 ? power - 1 : (power - 1) * (x / Math.Log(power));
    }
}
