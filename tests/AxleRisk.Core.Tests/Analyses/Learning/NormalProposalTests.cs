using AxleRisk.Core.Analyses.Learning;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Learning;

/// <summary>The normal density that coordinates are drawn from, against its formula.</summary>
public sealed class NormalProposalTests
{
    // Two coordinates with the means 0.5 and -1, standard deviations 0.8 and 0.5, correlation 0.6; the prior is standard normal.
    private const double A = 0.5, B = -1, SdA = 0.8, SdB = 0.5, Rho = 0.6;

    private static readonly NormalProposal Moved = new([A, B], [[SdA], [Rho * SdB, Math.Sqrt(1 - (Rho * Rho)) * SdB]]);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.5, -1)]
    [InlineData(-1.3, 0.4)]
    [InlineData(4, -3)]
    public void The_ratio_of_the_densities_is_that_of_the_bivariate_normal(double x, double y)
    {
        double[][] z = [[x], [y]];
        (double u, double v) = ((x - A) / SdA, (y - B) / SdB);
        double lnMoved = (-0.5 * ((u * u) - (2 * Rho * u * v) + (v * v)) / (1 - (Rho * Rho)))
            - Math.Log(SdA * SdB * Math.Sqrt(1 - (Rho * Rho)));
        double ratio = (-0.5 * ((x * x) + (y * y))) - lnMoved;
        Assert.Equal(ratio, Moved.LogPriorOverMoved(z, 0), 1e-12);

        // Eight parts of it and one of the prior.
        Assert.Equal(-Math.Log((1 / 9.0) + (8 / 9.0 * Math.Exp(-ratio))), Moved.LogPriorOverMixture(z, 0), 1e-12);
    }

    [Fact]
    public void What_is_drawn_has_its_moments_and_is_fitted_again()
    {
        const int Rows = 8_192;
        double[][] z = [new double[Rows], new double[Rows]];
        Moved.Draw(true, 1, "test", 0, Rows, z);
        Assert.Equal(A, z[0].Average(), 0.002);
        Assert.Equal(B, z[1].Average(), 0.002);
        Assert.Equal(Rho * SdA * SdB, z[0].Zip(z[1], (x, y) => (x - A) * (y - B)).Average(), 0.005);
        NormalProposal again = NormalProposal.Prior(2).Fitted(z, [.. Enumerable.Repeat(1.0, Rows)], 1, shrinks: false)!;
        Assert.Equal(A, again.Mean[0], 0.002);
        Assert.Equal(SdB * SdB, again.Covariance[1, 1], 0.005);
    }
}
