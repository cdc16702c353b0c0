using AxleRisk.Core.Analyses.Fits;
using AxleRisk.Core.Distributions;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Fits;

/// <summary>The statistic of Anderson and Darling by its definition, and against the integral it stands for.</summary>
public sealed class AndersonDarlingTests
{
    // -2 - (1/2) ((ln 0.25 + ln 0.25) + 3 (ln 0.75 + ln 0.75)), by hand.
    [Fact]
    public void Of_two_quarters_of_a_uniform_it_is_the_sum_by_hand() =>
        Assert.Equal(0.249341, AndersonDarling.Of(new Uniform(0, 1), [0.25, 0.75]), 1e-6);

    // n times the integral of (F_n - F)^2 / (F (1 - F)) over F (Anderson and Darling 1952), by the midpoint rule.
    [Theory]
    [InlineData(0.1, 0.3, 0.35, 0.9)]
    [InlineData(0.2, 0.5, 0.6, 0.61)]
    public void It_is_the_weighted_square_of_the_distance(double a, double b, double c, double d)
    {
        double[] sorted = [a, b, c, d];
        const int Steps = 400_000;
        double sum = 0;
        for (int i = 0; i < Steps; i++)
        {
            double f = (i + 0.5) / Steps, off = (sorted.Count(x => x <= f) / 4.0) - f;
            sum += off * off / (f * (1 - f));
        }

        Assert.Equal(4 * sum / Steps, AndersonDarling.Of(new Uniform(0, 1), sorted), 1e-5);
    }
}
