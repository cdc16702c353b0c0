using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Fits;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Fits;

/// <summary>Survival from intervals, by hand.</summary>
public class TurnbullTests
{
    // Rubin 1981: with exponential weights the part of n that lies beyond k of them is beta(n - k, k); of counts, of their sums.
    // 200 draws know a 2.5 % point to a fifth of the spread: three times that.
    [Theory]
    [InlineData(1, 1)]
    [InlineData(4, 4)]
    [InlineData(1, 4)]
    public void The_bands_of_known_values_are_those_of_the_bayesian_bootstrap(int odd, int even)
    {
        const int Values = 20;
        ImmutableArray<SurvivalStep> steps = Turnbull.Of(
            [.. Enumerable.Range(1, Values).Select(i => Observation.At(i, i % 2 == 0 ? even : odd))], 1);
        double all = (odd + even) * Values / 2.0;
        Assert.Equal(Values, steps.Length);
        for (int k = 2; k < Values - 1; k++)
        {
            double gone = (k / 2 * even) + ((k + 1) / 2 * odd);
            var beta = new ScaledBeta(all - gone, gone);
            Interval at = steps[k - 1].Survival;
            Assert.Equal(k, steps[k - 1].At);
            Assert.Equal(1 - (gone / all), at.Estimate, 1e-6);
            Assert.Equal(beta.Quantile(0.025), at.Low, 0.6 * beta.StandardDeviation);
            Assert.Equal(beta.Quantile(0.975), at.High, 0.6 * beta.StandardDeviation);
        }
    }

    // An interval that reaches over two places gives each what its mass is of both (Turnbull 1976), so that the masses repeat themselves.
    [Fact]
    public void An_interval_that_holds_two_places_is_shared_by_their_masses()
    {
        Observation[] data = [new(1, 2, 3), new(1, 3, 1), new(2, 3, 2), new(2, 4, 1), new(3, 4, 2)];
        ImmutableArray<SurvivalStep> steps = Turnbull.Of(data, 1);
        Assert.Equal([2, 3, 4], steps.Select(s => s.At));
        double first = 1 - steps[0].Survival.Estimate, second = steps[0].Survival.Estimate - steps[1].Survival.Estimate;
        double third = steps[1].Survival.Estimate - steps[2].Survival.Estimate;

        // Each mass is the sum of the parts that fall to it, over the nine.
        Assert.Equal((3 + (first / (first + second))) / 9, first, 1e-6);
        Assert.Equal((2 + (second / (first + second)) + (second / (second + third))) / 9, second, 1e-6);
        Assert.Equal((2 + (third / (second + third))) / 9, third, 1e-6);
        Assert.Equal(0, steps[2].Survival.Estimate, 1e-6);
    }
}
