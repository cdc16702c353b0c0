using AxleRisk.Core.Distributions;
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
    public void A_column_of_quantiles_is_the_same_to_the_bit_even_in_place(string name)
    {
        Distribution d = Cases.Named(name);
        double[] column = [0, 1e-9, 0.25, 0.5, 0.75, 1];
        double[] expected = [.. column.Select(d.Quantile)];
        d.Quantiles(column, column);
        Assert.Equal(expected, column);
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
    private static double Reach(Distribution d) => new[] { d.Minimum, d.Maximum }.Where(double.IsFinite).Select(Math.Abs).DefaultIfEmpty(0).Max();
}
