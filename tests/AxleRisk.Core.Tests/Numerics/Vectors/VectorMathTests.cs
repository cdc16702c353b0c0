using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;
using MathNet.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public class VectorMathTests
{
    private const double ExpTolerance = 3e-7;
    private const double ErfcTolerance = 5e-7;

    [Fact]
    public void The_exponential_agrees_with_the_library_at_every_width()
    {
        float[] x = [.. Enumerable.Range(-8600, 17201).Select(i => i * 0.01f + 0.00123f)];
        foreach (float[] y in new[] { Exp<FloatLanes128>(x), Exp<FloatLanes256>(x), Exp<FloatLanes512>(x) })
        {
            for (int i = 0; i < x.Length; i++)
            {
                Assert.InRange(y[i] / Math.Exp(x[i]), 1 - ExpTolerance, 1 + ExpTolerance);
            }
        }
    }

    // A row whose road has the usual exponent must not see a neighbour whose road has another.
    [Fact]
    public void The_exponential_of_zero_is_one_to_the_last_bit() => Assert.All(Exp<FloatLanes512>(new float[16]), y => Assert.Equal(1, y));

    [Fact]
    public void The_exponential_far_below_is_nothing_and_that_of_nothing_known_is_NaN()
    {
        float[] y = Exp<FloatLanes128>([-1e4f, float.NegativeInfinity, float.NaN, -88]);
        Assert.Equal(0, y[0]);
        Assert.Equal(0, y[1]);
        Assert.True(float.IsNaN(y[2]));
        Assert.Equal(0, y[3]);
    }

    [Fact]
    public void The_scaled_error_function_agrees_with_the_library_at_every_width()
    {
        float[] x = [.. Enumerable.Range(1, 2495).Select(i => 0.01f * i + 0.003f), 0.5f, 1, 2, 3, 4, 5, 6, 8];
        float[] inverses = [.. x.Select(v => 1 / v)];
        foreach (float[] y in new[] { Erfc<FloatLanes128>(inverses), Erfc<FloatLanes256>(inverses), Erfc<FloatLanes512>(inverses) })
        {
            for (int i = 0; i < x.Length; i++)
            {
                double at = 1.0 / inverses[i];
                Assert.InRange(y[i] * Math.Exp(-at * at) / SpecialFunctions.Erfc(at), 1 - ErfcTolerance, 1 + ErfcTolerance);
            }
        }
    }

    [Fact]
    public void The_upper_tail_agrees_with_the_library()
    {
        float[] z = [.. Enumerable.Range(-128, 256).Select(i => i * 0.093f), 0, -1e-12f, 1e-12f, 40, -40, float.PositiveInfinity,
            float.NegativeInfinity, 1, 2, 3];
        for (int i = 0; i + 4 <= z.Length; i += 4)
        {
            var y = new float[4];
            FloatLanes128.Store(VectorMath.NormalUpper(FloatLanes128.Load(in z[i])), ref y[0]);
            for (int k = 0; k < 4; k++)
            {
                double expected = StandardNormal.Upper(z[i + k]);
                // Half of it the rounding of the square, of up to 71.
                Assert.InRange(y[k], expected * (1 - 8e-6) - 1e-38, expected * (1 + 8e-6));
            }
        }
    }

    [Theory]
    [InlineData(1e3)]
    [InlineData(1e6)]
    public void The_scaled_error_function_falls_as_its_asymptote(double x)
    {
        // DLMF 7.12.1: 1/(x sqrt(pi)) (1 - 1/(2 x^2) + ...)
        double asymptote = (1 - 1 / (2 * x * x)) / (x * Constants.SqrtPi);
        float[] y = Erfc<FloatLanes512>([.. Enumerable.Repeat((float)(1 / x), 16)]);
        Assert.InRange(y[0] / asymptote, 1 - ErfcTolerance, 1 + ErfcTolerance);
    }

    private static float[] Exp<T>(float[] x)
        where T : struct, IFloatLanes<T> => Map<T>(x, VectorMath.Exp);

    private static float[] Erfc<T>(float[] x)
        where T : struct, IFloatLanes<T> => Map<T>(x, VectorMath.ScaledErfcOfInverse);

    private static float[] Map<T>(float[] x, Func<T, T> function)
        where T : struct, IFloatLanes<T>
    {
        var y = new float[x.Length];
        for (int i = 0; i <= x.Length - T.Count; i += T.Count)
        {
            T.Store(function(T.Load(in x[i])), ref y[i]);
        }

        for (int i = x.Length - T.Count; i < x.Length; i += T.Count)
        {
            T.Store(function(T.Load(in x[i])), ref y[i]);
        }

        return y;
    }
}
