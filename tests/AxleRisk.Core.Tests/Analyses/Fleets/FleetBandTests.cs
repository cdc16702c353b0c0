using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Scenarios;
using Xunit;
using static AxleRisk.Core.Tests.Analyses.Fleets.FleetCases;

namespace AxleRisk.Core.Tests.Analyses.Fleets;

/// <summary>
/// The predictive band of a fleet that shares an unknown lognormal Miner sum, from narrow to wide, while its owners' yearly distances
/// (lognormal, sigma 1) are drawn and so bring an error of the inner draws. Given the Miner sum the probability is closed:
/// Phi((ln(200,000 / 486,590) - sigma z) / sqrt(1 + 0.4605^2)). Source of the bands: Python 3 standard library (statistics.NormalDist,
/// binomial sums by math.lgamma), mixed over 801 quantiles z of the Miner sum.
/// </summary>
public sealed class FleetBandTests
{
    private const int Seeds = 4;

    // Plain sampling leaves an error of the inner draws that is, at 16,384 evaluations, 4, 54 and 80 % of the variance between
    // draws from the
    // widest Miner sum to the narrowest here: as drawn the bands were up to twice as wide. A twentieth is allowed. The ends of
    // the band, mean
    // of four seeds, rest on 2,048 outer draws, 51 beyond each end, 14 % of them by chance: 0.03 of the width.
    [Theory]
    [InlineData("sobol", 0.05, 433, 578)]
    [InlineData("sobol", 0.1, 383, 641)]
    [InlineData("plain", 0.1, 383, 641)]
    [InlineData("sobol", 0.2, 291, 785)]
    [InlineData("plain", 0.2, 291, 785)]
    [InlineData("sobol", 1.0, 11, 2004)]
    [InlineData("plain", 1.0, 11, 2004)]
    public void The_error_of_the_inner_draws_widens_no_band(string sampling, double sigma, double low, double high)
    {
        FleetResult[] runs = [.. Enumerable.Range(1, Seeds)
            .Select(seed => Run(Case(sigma), Vehicles, 16_384, seed: (ulong)seed, plan: sampling))];
        double width = high - low;
        Assert.Equal(width, runs.Average(r => r.Claims.High - r.Claims.Low), 0.05 * width);
        Assert.Equal(low, runs.Average(r => r.Claims.Low), 0.05 * width);
        Assert.Equal(high, runs.Average(r => r.Claims.High), 0.05 * width);
    }

    [Fact]
    public void Where_the_error_is_nearly_all_of_the_spread_the_answer_says_by_how_much_the_band_may_be_off()
    {
        foreach (ulong seed in new ulong[] { 1, 2, 3 })
        {
            FleetResult run = Run(Case(0.05), Vehicles, 16_384, seed: seed, plan: "plain");
            Assert.InRange(run.Sampling.InnerShare, 0.5, 1);
            Assert.InRange(run.Sampling.Residue, Math.Abs(((run.Claims.High - run.Claims.Low) / 145.0) - 1), 10);
        }
    }

    private static Fleet Vehicles { get; } = Fleet(2_400, Lognormal(400_000, 1), 6, 1e9);

    private static Scenario Case(double sigma) => With(ScaleOnly(), Quantities.MinerSum, Lognormal(1, sigma, Knowledge.Unknown));
}
