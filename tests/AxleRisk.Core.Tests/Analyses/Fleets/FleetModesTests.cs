using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;
using static AxleRisk.Core.Tests.Analyses.Fleets.FleetCases;

namespace AxleRisk.Core.Tests.Analyses.Fleets;

/// <summary>
/// Fleets that several modes of failure end. Where all is certain but the chances, survival is the product of normal, exponential and
/// Weibull (<see cref="CertainModes"/>).
/// </summary>
public sealed class FleetModesTests
{
    private static readonly Scenario Certain = CertainModes.Scenario;
    private static readonly (double Damage, double Yields, double Lives) Rates = CertainModes.Rates(Certain);

    [Fact]
    public void Claims_of_certain_distances_are_the_fleet_times_the_product_of_the_modes()
    {
        // One year of 30,000 km. Every vehicle has the same probability: no error of sampling.
        FleetResult result = Run(Certain, Fleet(2_000, Sure(30_000), 12, 150_000), 1024);
        Assert.True(result.Sampling.IsConditional);
        Assert.Equal(Failed(30_000), result.ClaimRate.Estimate, 1e-9);
        Assert.Equal(0, result.Claims.Expected.High - result.Claims.Expected.Low, 1e-9);

        // Sold in the one month there is, in its middle.
        Assert.Equal(2_000 * Failed(2_500 * 7.5), result.Months[7].SoFar.Expected.Estimate, 1e-5);
        Assert.Equal(2_000 * (Failed(2_500 * 7.5) - Failed(2_500 * 6.5)), result.Months[7].InMonth.Expected.Estimate, 1e-5);
    }

    [Fact]
    public void The_longest_warranty_is_the_quantile_of_the_earliest_life()
    {
        WarrantyLimit limit = Assert.Single(
            Run(Certain, Fleet(2_000, Sure(30_000), 60, 300_000) with { TargetClaimRate = 0.02 }, 1024).Warranty!.Limits);
        Assert.Equal(0.02, Failed(limit.Km.Value.Estimate), 1e-5);
        Assert.Equal(0.02, Failed(2_500 * limit.Months.Value.Estimate), 1e-5);
        Assert.Equal(0, limit.Km.Value.High - limit.Km.Value.Low, 1e-6);
    }

    // What owners drive is lognormal and independent of the life: E[1 - S(exp(mu + sigma z))] by the midpoint rule in the normal score.
    // 4096 Sobol' points in 16 scramblings bring their own standard error of 1e-5; counting would bring sqrt(0.1 / 4096) = 5e-3.
    [Fact]
    public void Uncertain_distances_have_the_expectation_of_the_product()
    {
        FleetResult result = Run(Certain, Fleet(2_000, Lognormal(30_000, 0.3), 12, 40_000), 4096);
        const int n = 20_000;
        double exact = Enumerable.Range(0, n).Average(i =>
            Failed(Math.Min(40_000, 30_000 * Math.Exp(0.3 * StandardNormal.Quantile((i + 0.5) / n)))));
        Assert.Equal(exact, result.ClaimRate.Estimate, 1e-4);
        Assert.InRange(result.ClaimRate.High - result.ClaimRate.Low, 0, 2e-4);
    }

    // One largest load for the whole fleet that nobody knows: given it a vehicle yields or it does not, so that its probability is 1
    // with the probability of a yield, y = 1 - exp(-yields), and p = 1 - S(fatigue) S(bearing) otherwise. Var p = ((1 - p)^2) y (1 - y).
    // In 16 scrambled sets of 32 the probability of a yield is within a 32nd of each: 16 of them average that to well below 0.01.
    [Fact]
    public void A_chance_that_the_fleet_shares_is_one_value_for_all()
    {
        const double km = 30_000;
        Scenario weak = With(Certain, Quantities.YieldStrength, Sure(190));
        (double damage, double yields, double lives) = CertainModes.Rates(weak);
        Assert.InRange(km * yields, 0.1, 2);
        Scenario scenario = With(weak, Quantities.YieldScatter,
            new Value.Uncertain(((Value.Uncertain)Quantities.YieldScatter.Default!).Distribution, Knowledge.Unknown));
        FleetResult result = Run(scenario, Fleet(2_000, Sure(km), 12, 150_000), 16_384);
        double left = CertainModes.Survival(km * damage, 0, km * lives), y = 1 - Math.Exp(-km * yields);
        Assert.Equal(["axle.largest_load_scatter"], result.Sampling.Shared.Select(f => f.Name));
        Assert.Equal(1 - (left * (1 - y)), result.ClaimRate.Estimate, 0.01);
        double variance = 2_000 * left * left * y * (1 - y);
        Assert.Equal(variance / (variance + (1 - y) * left * (1 - left)), result.UnknownShare, 1e-4);
        Assert.Equal(0, result.Sampling.InnerShare, 1e-12); // the vehicles of a draw are all the same
    }

    // The same for the Miner sum: given it fatigue is normal with the S-N scatter alone. The mean is that of all chance together.
    [Fact]
    public void An_unknown_Miner_sum_leaves_the_scatter_to_chance()
    {
        const double km = 30_000;
        Scenario scenario = With(Certain, Quantities.MinerSum, Lognormal(1, 0.29, Knowledge.Unknown));
        FleetResult result = Run(scenario, Fleet(2_000, Sure(km), 12, 150_000), 16_384);
        (double damage, double yields, double lives) = CertainModes.Rates(scenario);
        const int n = 20_000;
        double[] p = [.. Enumerable.Range(0, n).Select(i => 1 - StandardNormal.Upper(
                (Math.Log(km * damage) - (0.29 * StandardNormal.Quantile((i + 0.5) / n))) / (0.2 * Math.Log(10)))
            * Math.Exp(-km * yields) * CertainModes.Bearing(km * lives))];
        double mean = p.Average(), shared = 2_000 * p.Average(x => (x - mean) * (x - mean));
        Assert.Equal(Failed(km), mean, 1e-6);
        Assert.Equal(mean, result.ClaimRate.Estimate, 1e-3);
        Assert.Equal(shared / (shared + p.Average(x => x * (1 - x))), result.UnknownShare, 2e-3);
    }

    // The same distribution by another name is not averaged: what counting says is the same, but for its error. 16,384 vehicles:
    // four standard errors of sqrt(0.25 / 16384) are 0.016.
    [Fact]
    public void An_ageing_fleet_is_as_counting_has_it_and_sharper()
    {
        Scenario ageing = ThreeModes.With(ThreeModes.Scenario, (Quantities.DamperWear, new Value.Certain(0.3)),
            (Quantities.CorrosionRate, new Value.Uncertain(new Lognormal(0.5, 0.4), Knowledge.Varies)));
        Scenario varies = ageing with
        {
            Inputs = [.. ageing.Inputs.Select(i => i.Value is Value.Uncertain u
                ? i with { Value = u with { Knowledge = Knowledge.Varies } } : i)],
        };
        Scenario counted = With(varies, Quantities.LifeScatter, new Value.Uncertain(new Truncated(new Normal(0, 0.2), -1.8, 1.8),
            Knowledge.Varies));
        FleetResult[] results = [.. new[] { varies, counted }.Select(s => Run(s, Fleet(2_000, Sure(20_000), 24, 150_000), 16_384))];
        Assert.Equal([true, false], results.Select(r => r.Sampling.IsConditional));
        Assert.Equal(results[1].ClaimRate.Estimate, results[0].ClaimRate.Estimate, 0.016);
        double Width(FleetResult r) => r.ClaimRate.High - r.ClaimRate.Low;
        Assert.InRange(Width(results[0]), 0, Width(results[1]) / 1.5);
    }

    private static double Failed(double km) => 1 - CertainModes.Survival(km * Rates.Damage, km * Rates.Yields, km * Rates.Lives);
}
