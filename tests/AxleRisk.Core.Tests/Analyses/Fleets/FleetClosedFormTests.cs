using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using Xunit;
using static AxleRisk.Core.Tests.Analyses.Fleets.FleetCases;
using Interval = AxleRisk.Core.Numerics.Interval;

namespace AxleRisk.Core.Tests.Analyses.Fleets;

/// <summary>
/// Fleets whose answer is known: life is lognormal with the median of <see cref="MedianLifeKm"/>. Its five figures leave 1e-5
/// in ln life, 1e-5 of 3 / 0.54 in a probability of some percent: tolerances of 1e-4 to 1e-3 of the value.
/// </summary>
public sealed class FleetClosedFormTests
{
    private static readonly double Sigma = Math.Sqrt((MinerSigma * MinerSigma) + (ScatterSigma * ScatterSigma));

    [Fact]
    public void Claims_of_certain_distances_are_the_fleet_times_the_distribution_of_life()
    {
        // 3 years of 40,000 km. Source: scipy 1.10.1, stats.norm.
        FleetResult result = Run(ScaleOnly(), Fleet(2_000, Sure(40_000), 36, 150_000), 1024);
        Assert.Equal(10.1008, result.Claims.Expected.Estimate, 2e-3);
        Assert.Equal(0, result.EndedByDistance);
        Assert.Equal(0, result.UnknownShare);

        // Every vehicle has the same probability, so there is no error of sampling, and the count is binomial: scipy's binom.ppf
        // of 2000 and 0.00505.
        Assert.Equal(0, result.Claims.Expected.High - result.Claims.Expected.Low, 1e-9);
        Assert.Equal((4L, 17L), (result.Claims.Low, result.Claims.High));
    }

    [Fact]
    public void Whichever_comes_first_is_the_closed_form_of_two_normal_variables()
    {
        // ln(life) and ln(life / yearly distance) are bivariate normal. Source: scipy 1.10.1, multivariate_normal and quadrature
        // agree on 0.01101768.
        FleetResult result = Run(ScaleOnly(), Fleet(3_000, Lognormal(40_000, 0.4), 48, 150_000), 65_536);
        Assert.Equal(0.0110177, result.ClaimRate.Estimate, 1e-3 * 0.011);
        Assert.Equal(StandardNormal.Upper(Math.Log(150.0 / 160) / 0.4), result.EndedByDistance, 2e-3);
    }

    [Fact]
    public void A_shared_unknown_factor_gives_the_compound_binomial()
    {
        // The Miner sum is one unknown value: given it, claims are binomial. 5 years of 40,000 km. Source: numerical integration with
        // scipy 1.10.1 over 4001 points of the Miner sum: mean 102.317, quantiles 1 and 487, share of the variance 0.99506.
        FleetResult result = Run(ScaleOnly(Knowledge.Unknown), Fleet(2_000, Sure(40_000), 60, 1e6), 65_536);
        Assert.Equal(102.317, result.Claims.Expected.Estimate, 0.3);
        Assert.InRange(result.Claims.Low, 0, 2);

        // 1024 outer draws in 16 scrambled sequences: the quantile at 97.5 % rests on 26 of them, each standing for about 3 % in ln p.
        Assert.InRange(result.Claims.High, 465, 510);
        Assert.Equal(0.99506, result.UnknownShare, 5e-4);
        Assert.True(result.Claims.Expected.Low < 102.317 && result.Claims.Expected.High > 102.317);
        Assert.Equal(["fatigue.miner_sum"], result.Sampling.Shared.Select(f => f.Name));
    }

    [Fact]
    public void The_longest_warranty_is_the_quantile_of_life()
    {
        // Source: scipy 1.10.1: 47.739 months of 40,000 km a year; 159,131 km.
        WarrantyLimit limit = Assert.Single(Run(ScaleOnly(), Fleet(2_000, Sure(40_000), 60, 300_000) with { TargetClaimRate = 0.02 },
            1024).Warranty!.Limits);
        Assert.Equal(TargetBasis.Average, limit.Basis);
        Assert.Equal(47.739, limit.Months.Value.Estimate, 0.01);
        Assert.Equal(159_131, limit.Km.Value.Estimate, 30.0);
    }

    [Fact]
    public void The_warranty_that_holds_with_ninety_percent_follows_the_unknown_factor()
    {
        // P(life < km | Miner sum) at the Miner sum's lower tenth. Source: scipy 1.10.1, 130,319 km; P(rate of 3 years <= 5 %) = 0.98663.
        WarrantyLimits limits = Run(ScaleOnly(Knowledge.Unknown), Fleet(2_000, Sure(40_000), 60, 300_000) with { TargetClaimRate = 0.02 },
            16_384).Warranty!;
        Assert.Equal(130_319, limits.Limits[1].Km.Value.Estimate, 600.0);
        Assert.Equal(159_131, limits.Limits[0].Km.Value.Estimate, 600.0);
        WarrantyLimits shorter = Run(ScaleOnly(Knowledge.Unknown), Fleet(2_000, Sure(40_000), 36, 300_000) with { TargetClaimRate = 0.05 },
            16_384).Warranty!;
        Assert.Equal(0.98663, shorter.Confidence.Estimate, 0.008); // 512 draws in 16 strata sets of 32: less than 4 / 512 off
    }

    [Fact]
    public void Targets_out_of_reach_and_targets_always_met_are_said_to_be_so()
    {
        Fleet fleet = Fleet(2_000, Sure(400_000), 60, 300_000);
        Assert.Equal(SearchOutcome.NoneMeets,
            Run(ScaleOnly(), fleet with { TargetClaimRate = 1e-9 }, 1024).Warranty!.Limits[0].Months.Outcome);
        Assert.Equal(SearchOutcome.EveryMeets,
            Run(ScaleOnly(), fleet with { TargetClaimRate = 0.9 }, 1024).Warranty!.Limits[0].Months.Outcome);
    }

    [Fact]
    public void The_cost_has_the_moments_of_a_compound_sum()
    {
        // Binomial claims of n p = 1,023: Wald's mean n p m and variance n p (s^2 + (1 - p) m^2) (Blackwell and Girshick 1946); the sum is
        // normal to a skewness of 1 / sqrt(1000). 16,384 fleets give its quantile at 2.5 % to 4 x 0.02 standard deviations.
        var cost = new Value.Uncertain(new Gamma(4, 250), Knowledge.Varies);
        FleetResult result = Run(ScaleOnly(), Fleet(20_000, Sure(40_000), 60, 1e6) with { CostPerClaim = cost }, 1024);
        double p = StandardNormal.Cumulative(Math.Log(200_000 / MedianLifeKm) / Sigma);
        double sd = Math.Sqrt(20_000 * p * (500.0 * 500 + ((1 - p) * 1000 * 1000)));
        Assert.Equal(20_000 * p * 1000, result.Cost!.Expected.Estimate, 1e-3 * 20_000 * p * 1000);
        Assert.Equal((20_000 * p * 1000) - (1.96 * sd), result.Cost.Low, 0.12 * sd);
        Assert.Equal((20_000 * p * 1000) + (1.96 * sd), result.Cost.High, 0.12 * sd);
    }

    [Fact]
    public void A_certain_cost_is_so_much_a_claim()
    {
        FleetResult result = Run(ScaleOnly(), Fleet(2_000, Sure(40_000), 60, 1e6) with { CostPerClaim = Sure(30) }, 1024);
        Interval claims = result.Claims.Expected;
        Assert.Equal(new CostPrediction(new Interval(30 * claims.Estimate, 30 * claims.Low, 30 * claims.High), 30 * result.Claims.Low,
            30 * result.Claims.High, 0), result.Cost);
    }

    [Fact]
    public void The_months_add_up_sales_and_ages()
    {
        // Half sold in each of two months, 12 months of warranty: ages 0.5 and none after the first month, 1.5 and 0.5 after the second.
        FleetResult result = Run(ScaleOnly(), Fleet(1_000_000, Sure(120_000), 12, 1e6) with { SaleShares = [0.5, 0.5] }, 1024);
        double Failed(double months) => 1_000_000 * StandardNormal.Cumulative(Math.Log(10_000 * months / MedianLifeKm) / Sigma);
        Assert.Equal(14, result.Months.Length);
        double Close(double x) => (1e-3 * x) + 1e-6;
        Assert.Equal((Failed(7.5) + Failed(6.5)) / 2, result.Months[7].SoFar.Expected.Estimate, Close(Failed(7)));
        Assert.Equal((Failed(7.5) - Failed(5.5)) / 2, result.Months[7].InMonth.Expected.Estimate, Close(Failed(7)));
        Assert.Equal((Failed(12) + Failed(11.5)) / 2, result.Months[12].SoFar.Expected.Estimate, Close(Failed(12)));
        Assert.Equal(Failed(12), result.Months[13].SoFar.Expected.Estimate, Close(Failed(12)));
        Assert.Equal(result.Claims.Expected.Estimate, result.Months[^1].SoFar.Expected.Estimate, 1e-6);
    }
}
