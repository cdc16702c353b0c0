using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Distributions;

/// <summary>Tabulated quantiles against those solved for one by one, their scalar twins.</summary>
public sealed class TabledQuantileTests
{
    // What the table states, 1e-10 (1 + |u|) of the solved scale: of the width of a beta 1e-10 max((1 + |u|) e^-|u|) < 1e-10.
    private const double OfWidth = 1e-10;

    public static TheoryData<double, double> Shapes => new()
    {
        { 1, 1 }, { 2.6, 3.4 }, { 1, 5 }, { 0.5, 0.5 }, { 0.01, 0.01 }, { 0.002, 7 }, { 1e4, 3 }, { 1e5, 1e5 }, { 0.3, 1e3 },
    };

    public static TheoryData<double> GammaShapes => [0.01, 0.05, 0.5, 1, 3, 60, 1e3, 1e5];

    [Theory]
    [MemberData(nameof(Shapes))]
    public void A_beta_over_the_whole_unit_interval_and_its_tails(double alpha, double beta)
    {
        var d = new ScaledBeta(alpha, beta, -2, 3);
        double[] p = UnitInterval(), x = new double[p.Length];
        d.Quantiles(p, x);
        for (int i = 0; i < p.Length; i++)
        {
            // The normal score of a p near 1 has the digits of 1 - p: they move a steep quantile by its slope.
            double slope = 4e-16 / Math.Max(1e-300, d.Density(d.Quantile(p[i])));
            Assert.Equal(d.Quantile(p[i]), x[i], (5 * OfWidth) + Math.Min(slope, 1e-6));
        }
    }

    [Theory]
    [MemberData(nameof(GammaShapes))]
    public void A_gamma_over_the_whole_unit_interval_and_its_tails(double shape)
    {
        var d = new Gamma(shape, 3);
        double[] p = UnitInterval(), x = new double[p.Length];
        d.Quantiles(p, x);
        for (int i = 0; i < p.Length; i++)
        {
            double expected = d.Quantile(p[i]);
            double slope = 4e-16 / Math.Max(1e-300, d.Density(expected));
            Assert.True(
                x[i] == expected || Math.Abs(x[i] - expected) <= (1e-9 * (expected + 3)) + Math.Min(slope, 1e-6 * expected),
                    $"{x[i]:R} for {expected:R} at {p[i]:R}");
        }
    }

    [Theory]
    [MemberData(nameof(GammaShapes))]
    public void Scores_far_out_keep_the_tail_they_stand_for(double shape)
    {
        // P(X > x) = 1 - Phi(z) by definition of the score; the table's error moves it by the slope of ln P over ln x.
        var d = new Gamma(shape, 1);
        double[] z = [-37, -20.3, -9.01, 9.01, 20.3, 37, 1000], x = new double[z.Length];
        d.OfScores(z, x);
        for (int i = 0; i < z.Length; i++)
        {
            double score = Math.Clamp(z[i], -37, 37);
            double expected = score < 0 ? d.Quantile(StandardNormal.Cumulative(score)) : d.UpperQuantile(StandardNormal.Upper(score));
            Assert.Equal(expected, x[i], 1e-9 * (expected + 1));
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(15)]
    [InlineData(16)]
    [InlineData(17)]
    public void A_value_depends_on_its_score_alone(int length)
    {
        Distribution[] all =
        [
            new Pert(10, 12, 20), new Gamma(0.5, 20), new ScaledBeta(0.01, 0.01),
            new Truncated(new Gamma(3, 1), 4, null), new Truncated(new Pert(10, 12, 20), 11, 12), Scaled.Of(new Pert(1, 2, 5), 1.7),
        ];
        double[] p = [.. Enumerable.Range(0, 64).Select(i => (i + 0.5) / 64)];
        double[] z = [.. p.Select(StandardNormal.Quantile)];
        foreach (Distribution d in all)
        {
            double[] whole = new double[64], ofScores = new double[64], part = new double[length];
            d.Quantiles(p, whole);
            d.OfScores(z, ofScores);
            for (int first = 0; first + length <= 64; first += length)
            {
                d.Quantiles(p.AsSpan(first, length), part);
                Assert.Equal(whole[first..(first + length)], part); // bitwise
                d.OfScores(z.AsSpan(first, length), part);
                Assert.Equal(ofScores[first..(first + length)], part);
                Assert.All(part.Zip(whole[first..]), pair => Assert.Equal(pair.Second, pair.First, 1e-9 * (1 + Math.Abs(pair.Second))));
            }
        }
    }

    [Fact]
    public void It_never_falls_by_more_than_rounding_where_its_parts_meet()
    {
        foreach (Distribution d in new Distribution[]
            { new Pert(0, 0.2, 1), new Gamma(0.05, 1), new ScaledBeta(0.01, 0.02), new Gamma(1e4, 1e-4) })
        {
            double[] z = [.. Enumerable.Range(0, 40_001).Select(i => (i - 20_000) / 2048.0)], x = new double[z.Length];
            d.OfScores(z, x);
            Assert.All(Enumerable.Range(1, z.Length - 1),
                i => Assert.True(x[i] >= x[i - 1] - (1e-12 * Math.Abs(x[i])), $"{d} falls at {z[i]}"));
        }
    }

    [Fact]
    public void What_no_polynomial_serves_goes_on_being_solved()
    {
        double[] z = [-0.1, 0.01, 0.04, 0.06, 0.4, 1.1, double.NegativeInfinity, double.PositiveInfinity, double.NaN],
            u = new double[z.Length];
        new TabledQuantile((lower, _) => lower > 0.52 ? 1 : 0).Fill(z, u); // Phi(0.0502) = 0.52
        Assert.Equal([0, 0, 0, 1, 1, 1, double.NegativeInfinity, double.PositiveInfinity, double.NaN], u);
    }

    [Fact]
    public void Once_its_cells_are_made_nothing_is_solved()
    {
        int solved = 0;
        var table = new TabledQuantile((lower, upper) =>
        {
            solved++;
            return IncompleteBeta.LogitQuantile(2, 3, lower, upper);
        });
        double[] z = [.. Enumerable.Range(0, 10_000).Select(i => (i - 5_000) / 1_000.0)], u = new double[z.Length];
        table.Fill(z, u);
        Assert.InRange(solved, 1, 2_000); // 20 cells of a few dozen points
        int before = solved;
        table.Fill(z, u);
        Assert.Equal(before, solved);
    }

    /// <summary>Even and uneven steps over the interval, and both tails to the last probability that a sample can have.</summary>
    private static double[] UnitInterval()
    {
        double[] inside = [.. Enumerable.Range(1, 1_000).Select(i => i / 1001.0)];
        double[] low = [.. Enumerable.Range(4, 50).Select(i => Math.Pow(2, -i) * 1.1)];
        return [0, 1e-300, .. low, .. inside, .. low.Select(p => 1 - p), Math.BitDecrement(1.0), 1];
    }
}
