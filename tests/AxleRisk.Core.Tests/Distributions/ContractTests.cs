using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Distributions;

/// <summary>What every member of every family must do.</summary>
public class ContractTests
{
    private static readonly double[] Probabilities = [1e-12, 1e-9, 1e-6, 1e-3, 0.1, 0.3, 0.5, 0.7, 0.9, 0.999, 1 - 1e-6, 1 - 1e-12];

    public static TheoryData<string> Continuous => Cases.ContinuousNames;

    public static TheoryData<string> All => Cases.AllNames;

    [Theory]
    [MemberData(nameof(Continuous))]
    public void Cumulative_inverts_the_quantile_in_both_tails(string name)
    {
        Distribution d = Cases.Named(name);
        foreach (double p in Probabilities)
        {
            double x = d.Quantile(p);
            AssertNear(p, d.Cumulative(x), d, x);
            AssertNear(1 - p, d.Upper(x), d, x);
        }
    }

    // The cumulated hazard is -ln P(X > x), of one value and of a column.
    [Theory]
    [MemberData(nameof(Continuous))]
    public void The_hazard_is_minus_the_logarithm_of_survival(string name)
    {
        Distribution d = Cases.Named(name);
        double[] x = [.. Probabilities.Select(d.Quantile)];
        var hazards = new double[x.Length];
        d.Hazards(x, hazards);
        for (int i = 0; i < x.Length; i++)
        {
            double p = d.Cumulative(x[i]), exact = p < 1e-3 ? p + (0.5 * p * p) + (p * p * p / 3) : -Math.Log(d.Upper(x[i]));
            Assert.Equal(exact, d.Hazard(x[i]), 1e-9 * exact);
            Assert.Equal(exact, hazards[i], 1e-9 * exact);
        }
    }

    [Theory]
    [MemberData(nameof(Continuous))]
    public void A_normal_score_keeps_its_tail(string name)
    {
        // P(X > x) = 1 - Phi(z) by definition of the score; at 11 it is 2e-28, where Phi is 1 to the last digit.
        Distribution d = Cases.Named(name);
        double[] z = [-6, -1, 0, 1, 6, 11];
        var x = new double[z.Length];
        d.OfScores(z, x);
        for (int i = 0; i < z.Length; i++)
        {
            AssertNear(StandardNormal.Upper(z[i]), d.Upper(x[i]), d, x[i]);
            AssertNear(StandardNormal.Cumulative(z[i]), d.Cumulative(x[i]), d, x[i]);
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_score_has_the_value_of_its_probability(string name)
    {
        Distribution d = Cases.Named(name);
        double[] z = [.. Enumerable.Range(0, 41).Select(i => (i - 20) / 10.0 + 0.013)];
        var x = new double[z.Length];
        d.OfScores(z, x);
        Assert.All(z.Zip(x), p => Assert.Equal(d.Quantile(StandardNormal.Cumulative(p.First)), p.Second, 1e-9 * (1 + Math.Abs(p.Second))));
    }

    [Theory]
    [MemberData(nameof(Continuous))]
    public void Upper_inverts_the_upper_quantile_far_out(string name)
    {
        Distribution d = Cases.Named(name);
        foreach (double q in Probabilities.Prepend(1e-30))
        {
            double x = d.UpperQuantile(q);
            AssertNear(q, d.Upper(x), d, x);
        }
    }

    [Theory]
    [MemberData(nameof(Continuous))]
    public void The_density_integrates_to_the_cumulative(string name)
    {
        Distribution d = Cases.Named(name);
        double[] grid = [1e-3, 0.1, 0.5, 0.9, 0.999];
        for (int i = 1; i < grid.Length; i++)
        {
            double low = d.Quantile(grid[i - 1]);
            double high = d.Quantile(grid[i]);
            Assert.Equal(d.Cumulative(high) - d.Cumulative(low), Integration.OfDensity(d, low, high), 1e-8);
        }
    }

    [Theory]
    [MemberData(nameof(Continuous))]
    public void Mean_and_standard_deviation_are_those_of_the_quantile(string name)
    {
        Distribution d = Cases.Named(name);

        // The quantile has digits relative to its size, not to its spread; the rule itself is good to about 1e-9.
        double rounding = 1e-13 * (Math.Abs(d.Mean) / d.StandardDeviation);
        double mean = Integration.Expectation(d, x => (x - d.Mean) / d.StandardDeviation);
        double square = Integration.Expectation(d, x => Math.Pow((x - d.Mean) / d.StandardDeviation, 2));
        Assert.Equal(0, mean, 1e-7 + rounding);
        Assert.Equal(1, square, 1e-6 + rounding);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void The_support_is_respected(string name)
    {
        Distribution d = Cases.Named(name);
        Assert.Equal(d.Minimum, d.Quantile(0));
        Assert.Equal(d.Maximum, d.Quantile(1));
        Assert.Equal(d.Maximum, d.UpperQuantile(0));
        Assert.Equal(d.Minimum, d.UpperQuantile(1));
        Assert.Equal(0, d.Cumulative(double.NegativeInfinity));
        Assert.Equal(1, d.Cumulative(double.PositiveInfinity));
        Assert.Equal(1, d.Upper(double.NegativeInfinity));
        Assert.Equal(0, d.Upper(double.PositiveInfinity));
        Assert.Equal(0, d.Density(Math.BitDecrement(d.Minimum)));
        Assert.Equal(0, d.Density(Math.BitIncrement(d.Maximum)));
        Assert.All(Probabilities, p => Assert.InRange(d.Quantile(p), d.Minimum, d.Maximum));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void The_quantile_never_falls(string name)
    {
        Distribution d = Cases.Named(name);
        double[] x = [.. Enumerable.Range(0, 4097).Select(i => d.Quantile(i / 4096.0))];
        Assert.All(Enumerable.Range(1, 4096), i => Assert.True(x[i] >= x[i - 1], $"falls at {i}/4096"));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_column_of_quantiles_is_that_of_its_elements_but_for_last_bits(string name)
    {
        Distribution d = Cases.Named(name);
        double[] column = [0, 1e-9, 0.003, 0.25, 0.5, 0.75, 0.9, 0.997, 1];
        double[] x = new double[column.Length];
        d.Quantiles(column, x);
        for (int i = 0; i < x.Length; i++)
        {
            // Vector functions and scalar ones differ by a few last bits, of the value or, near an upper end, of the probability.
            double expected = d.Quantile(column[i]);
            double spread = Math.Abs(d.Quantile(0.997) - d.Quantile(0.003));
            double ofProbability = 4e-16 / Math.Max(1e-300, d.Density(expected));
            Assert.True(
                x[i] == expected || Math.Abs(x[i] - expected) <= (1e-13 * (Math.Abs(expected) + spread)) + ofProbability,
                    $"{x[i]:R} for {expected:R}");
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_quantile_does_not_depend_on_its_place_in_the_column_and_may_take_its_place(string name)
    {
        Distribution d = Cases.Named(name);
        double[] p = [.. Enumerable.Range(0, 300).Select(i => (i + 0.5) / 300)];
        double[] whole = new double[p.Length];
        d.Quantiles(p, whole);
        foreach (int first in new[] { 0, 1, 7, 8, 9, 255, 256, 299 })
        {
            double[] part = p[first..];
            d.Quantiles(part, part);
            Assert.Equal(whole[first..], part); // bitwise
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void The_cumulative_is_the_least_probability_that_reaches_a_value(string name)
    {
        Distribution d = Cases.Named(name);
        foreach (double p in Probabilities)
        {
            double x = d.Quantile(p);
            Assert.True(d.Cumulative(x) >= p - (1e-9 * p) - (4 * Ulp(x) * d.Density(x)) - 1e-15);
        }
    }

    [Property(MaxTest = 100)]
    public bool The_quantile_keeps_the_order_of_any_two_probabilities(uint a, uint b)
    {
        double low = Math.Min(a, b) / 4294967296.0;
        double high = Math.Max(a, b) / 4294967296.0;
        return Cases.All.All(d => d.Quantile(low) <= d.Quantile(high));
    }

    private static double Ulp(double x) => Math.BitIncrement(Math.Abs(x)) - Math.Abs(x);

    /// <summary>Ten digits, less what the rounding of x itself (and of p near 1) takes away.</summary>
    private static void AssertNear(double expected, double actual, Distribution d, double x)
    {
        double ulp = Ulp(Math.Max(Math.Abs(x), Reach(d)));
        double density = new[] { x - ulp, x, x + ulp }.Max(d.Density);
        double tolerance = (1e-10 * expected) + (4 * ulp * density);
        Assert.True(Math.Abs(actual - expected) <= tolerance, $"{actual:R} instead of {expected:R} at x = {x:R}");
    }

    /// <summary>The size of the numbers that x - minimum and maximum - x are computed from.</summary>
    private static double Reach(Distribution d) => new[] { d.Minimum, d.Maximum }.Where(double.IsFinite).Select(Math.Abs).DefaultIfEmpty(0)
        .Max();
}
