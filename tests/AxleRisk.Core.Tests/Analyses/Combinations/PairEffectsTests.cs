using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Combinations;

public sealed class PairEffectsTests
{
    [Fact]
    public void Independent_effects_that_multiply_give_the_multiplied_figure()
    {
        double[][] units = Synthetic.Units(3, 100_000, 11);
        EventRows rows = Synthetic.Rows(units, u => 0.02 * (u[0] > 0.8 ? 4 : 1) * (u[1] > 0.8 ? 3 : 1) * (1 + u[2]) / 2);
        PairEffect pair = Pairs(rows, units, [0, 1]).Single();

        // Exactly 0.02 * 4 * 3 * 0.75; 4000 rows, spread of u2 about 0.2 of the mean: standard error 0.3 %.
        Assert.Equal(0.18, pair.Together.Estimate, 4 * 0.003 * 0.18);
        Assert.Equal(0.18, pair.Multiplied.Estimate, 4 * 0.01 * 0.18);
        Assert.InRange(1, pair.Ratio.Low, pair.Ratio.High);
        Assert.False(pair.IsNotable);
        Assert.Equal(0.04, pair.Likelihood, 4 * Math.Sqrt(0.04 / 100_000));
    }

    // Linear limit state beta - a1 U1 - a2 U2 - a3 U3 with the third integrated; expected by quadrature of the density.
    [Fact]
    public void A_linear_limit_state_agrees_with_quadrature()
    {
        const double Beta = 2, A1 = 0.7, A2 = 0.5;
        double a3 = Math.Sqrt(1 - (A1 * A1) - (A2 * A2));
        double[][] units = Synthetic.Units(2, 100_000, 13);
        double Fails(double z1, double z2) => StandardNormal.Cumulative(((A1 * z1) + (A2 * z2) - Beta) / a3);
        EventRows rows = Synthetic.Rows(units, u => Fails(StandardNormal.Quantile(u[0]), StandardNormal.Quantile(u[1])));
        PairEffect pair = Pairs(rows, units, [0, 1]).Single();
        double z80 = StandardNormal.Quantile(0.8);
        double both = Integral(z1 => StandardNormal.Density(z1) * Integral(z2 => StandardNormal.Density(z2) * Fails(z1, z2), z80, 9), z80,
            9) / 0.04;
        double first = Integral(z => StandardNormal.Density(z) * StandardNormal.Cumulative(((A1 * z) - Beta) / Math.Sqrt(1 - (A1 * A1))),
            z80, 9) / 0.2;
        double second = Integral(z => StandardNormal.Density(z) * StandardNormal.Cumulative(((A2 * z) - Beta) / Math.Sqrt(1 - (A2 * A2))),
            z80, 9) / 0.2;
        double multiplied = first * second / StandardNormal.Cumulative(-Beta);
        AssertInside(both, pair.Together);
        AssertInside(multiplied, pair.Multiplied);
        AssertInside(both / multiplied, pair.Ratio);
        Assert.True(pair.IsNotable); // the pair gives less than the product: probabilities saturate
        Assert.True((pair.Together.High - pair.Together.Low) / pair.Together.Estimate < 0.05);
    }

    private static System.Collections.Immutable.ImmutableArray<PairEffect> Pairs(EventRows rows, double[][] units, int[] chosen) =>
        PairEffects.Of(rows, Synthetic.Told(units.Length), Synthetic.UpperFifths(units), chosen, new CombineLimits());

    private static double Integral(Func<double, double> f, double from, double to)
    {
        // Simpson's rule, 400 panels: error far below 1e-6 of these smooth integrands.
        const int Panels = 400;
        double h = (to - from) / Panels, sum = f(from) + f(to);
        for (int i = 1; i < Panels; i++)
        {
            sum += (i % 2 == 1 ? 4 : 2) * f(from + (i * h));
        }

        return sum * h / 3;
    }

    // A 95 % interval widened to four standard errors (Student, 63 degrees of freedom: 2.00).
    private static void AssertInside(double expected, Interval interval) =>
        Assert.Equal(expected, interval.Estimate, interval.High - interval.Low);
}
