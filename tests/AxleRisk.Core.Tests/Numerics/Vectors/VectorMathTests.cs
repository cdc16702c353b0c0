using AxleRisk.Core.Numerics;
using MathNet.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class VectorMathTests
{
    // exp to a few last bits; the reduction's own error grows to one bit more at the ends.
    private const double ExpTolerance = 1e-15;

    // The polynomial's truncation is 5e-14; MathNet's erfc is good to 1e-15 and its product with exp(x^2) loses x^2 last bits.
    private const double ErfcTolerance = 1e-12;

    [Fact]
    public void The_exponential_agrees_with_the_library_at_every_width()
    {
        double[] x = [.. Enumerable.Range(-7000, 14001).Select(i => i * 0.1 + 0.0123)];
        foreach (double[] y in new[] { Exp<DoubleLanes128>(x), Exp<DoubleLanes256>(x), Exp<DoubleLanes512>(x) })
        {
            for (int i = 1; i < x.Length; i++)
                Assert.InRange(y[i] / Math.Exp(x[i]), 1 - ExpTolerance, 1 + ExpTolerance);
        }
    }

    [Fact]
    public void The_exponential_of_zero_is_one_to_the_last_bit() => Assert.All(Exp<DoubleLanes512>(new double[8]), y => Assert.Equal(1, y));

    [Fact]
    public void The_exponential_far_below_is_next_to_nothing_and_that_of_nothing_known_is_NaN()
    {
        double[] y = Exp<DoubleLanes128>([-1e4, double.NegativeInfinity, double.NaN, -1]);
        Assert.InRange(y[0], 0, 1e-300);
        Assert.InRange(y[1], 0, 1e-300);
        Assert.True(double.IsNaN(y[2]));
    }

    [Fact]
    public void The_scaled_error_function_agrees_with_the_library_at_every_width()
    {
        double[] x = [0, .. Enumerable.Range(0, 2495).Select(i => 0.01 * i + 0.003), 0.5, 1, 2, 3, 4, 5, 6, 8];
        foreach (double[] y in new[] { Erfc<DoubleLanes128>(x), Erfc<DoubleLanes256>(x), Erfc<DoubleLanes512>(x) })
        {
            for (int i = 0; i < x.Length; i++)
                Assert.InRange(y[i] * Math.Exp(-x[i] * x[i]) / SpecialFunctions.Erfc(x[i]), 1 - ErfcTolerance, 1 + ErfcTolerance);
        }
    }

    [Theory]
    [InlineData(1e3)]
    [InlineData(1e6)]
    public void The_scaled_error_function_falls_as_its_asymptote(double x)
    {
        // DLMF 7.12.1: 1/(x sqrt(pi)) (1 - 1/(2 x^2) + ...)
        double asymptote = (1 - 1 / (2 * x * x)) / (x * Constants.SqrtPi);
        double[] y = Erfc<DoubleLanes512>([x, x, x, x, x, x, x, x]);
        Assert.InRange(y[0] / asymptote, 1 - ErfcTolerance, 1 + ErfcTolerance);
    }

    private static double[] Exp<T>(double[] x)
        where T : struct, IDoubleLanes<T> => Map<T>(x, VectorMath.Exp);

    private static double[] Erfc<T>(double[] x)
        where T : struct, IDoubleLanes<T> => Map<T>(x, VectorMath.ScaledErfc);

    private static double[] Map<T>(double[] x, Func<T, T> function)
        where T : struct, IDoubleLanes<T>
    {
        var y = new double[x.Length];
        for (int i = 0; i <= x.Length - T.Count; i += T.Count)
            T.Store(function(T.Load(in x[i])), ref y[i]);
        for (int i = x.Length - T.Count; i < x.Length; i += T.Count)
            T.Store(function(T.Load(in x[i])), ref y[i]);
        return y;
    }
}
