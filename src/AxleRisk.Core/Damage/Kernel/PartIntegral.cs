using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;
using MathNet.Numerics;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// <see cref="WeibullRanges"/> in closed form. Ranges of a Weibull density of shape h (1 exponential, 2 Rayleigh) whose scale is
/// q times the
/// range at the knee do, per cycle and in units of that of a cycle at the knee, the damage <c>U1 + Gamma(1 + m2/h) q^m2 - U2</c>, m1 and m2
/// the slopes above and below the knee, <c>U = q^m Gamma(1 + m/h, y)</c>, y = q^-h. For whole slopes
/// <c>U = e^-y (P(q^h) + w q^m e^y erfc(1/q))</c> with a polynomial P (DLMF 8.8.2, step by step), so that one exponential serves both.
/// </summary>
internal sealed class PartIntegral
{
    // The complete function over the whole damage: how much the difference above may magnify the errors of single precision.
    private const double GreatestLoss = 40;
    private const double SeriesTolerance = 1e-7;

    /// <summary>The form for the slopes of a curve.</summary>
    public PartIntegral(SlopePair slopes, int shape)
    {
        Slopes = slopes;
        double a1 = 1 + (double)slopes.Above / shape;
        double a2 = 1 + (double)slopes.Below / shape;
        Complete = (float)SpecialFunctions.Gamma(a2);
        double[] above = Polynomial(a1);
        double[] below = Polynomial(a2);
        Above = ToSingle(above);
        Below = ToSingle(below);
        Difference = ToSingle(below.Select((c, i) => (i < above.Length ? above[i] : 0) - c).Skip(1));
        ErfcAbove = ErfcWeight(a1);
        ErfcBelow = ErfcWeight(a2);
        LeastPlain = LeastPlainFor(slopes, shape, a1, a2);
        LowerSeries = ToSingle(SeriesFor(a2, LeastPlain));
    }

    /// <summary>The slopes.</summary>
    public SlopePair Slopes { get; }

    /// <summary>Gamma(1 + m2/h).</summary>
    public float Complete { get; }

    /// <summary>P above the knee, from the constant on.</summary>
    public ImmutableArray<float> Above { get; }

    /// <summary>P below the knee.</summary>
    public ImmutableArray<float> Below { get; }

    /// <summary>P above less P below, over q^h: the constants cancel.</summary>
    public ImmutableArray<float> Difference { get; }

    /// <summary>w above the knee; 0 but for odd slopes and h = 2.</summary>
    public float ErfcAbove { get; }

    /// <summary>w below the knee.</summary>
    public float ErfcBelow { get; }

    /// <summary>The least y for which the difference keeps its digits.</summary>
    public float LeastPlain { get; }

    /// <summary>For smaller y: <c>q^m2 gamma(1 + m2/h, y) = y e^-y</c> times this series in y (DLMF 8.7.1).</summary>
    public ImmutableArray<float> LowerSeries { get; }

    // Gamma(a) / Gamma(a - i)
    private static double[] Polynomial(double a)
    {
        var c = new double[(int)Math.Floor(a)];
        c[0] = 1;
        for (int i = 1; i < c.Length; i++)
        {
            c[i] = c[i - 1] * (a - i);
        }

        return c;
    }

    private static float ErfcWeight(double a) => a == Math.Floor(a) ? 0 : (float)SpecialFunctions.Gamma(a);

    private static float LeastPlainFor(SlopePair slopes, int shape, double a1, double a2)
    {
        double y = 20;
        while (Loss(0.95 * y) <= GreatestLoss)
        {
            y *= 0.95;
        }

        return (float)y;

        double Loss(double at)
        {
            double q = Math.Pow(at, -1.0 / shape);
            double complete = Math.Pow(q, slopes.Below) * SpecialFunctions.Gamma(a2);
            return complete / (Math.Pow(q, slopes.Above) * PartialGamma.Upper(a1, at) + complete
                - Math.Pow(q, slopes.Below) * PartialGamma.Upper(a2, at));
        }
    }

    private static List<double> SeriesFor(double a, double greatest)
    {
        List<double> series = [1 / a];
        for (int k = 1; series[^1] * Math.Pow(greatest, k - 1) > SeriesTolerance * series[0]; k++)
        {
            series.Add(series[^1] / (a + k));
        }

        return series;
    }

    private static ImmutableArray<float> ToSingle(IEnumerable<double> values) => [.. values.Select(v => (float)v)];
}
