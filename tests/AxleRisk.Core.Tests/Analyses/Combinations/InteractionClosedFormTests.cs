using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Analyses.Fleets;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Combinations;

/// <summary>
/// Interaction indices of a life that is the product of three lognormal factors (Miner sum, S-N scatter, damage ratio), in every
/// sampling plan. Two rows that share a set of factors with a part rho of the variance of ln life both fail with the bivariate
/// normal probability Phi2(g, g; rho); the indices follow from their definitions (Saltelli 2002; Grabisch and Roubens 1999).
/// </summary>
public sealed class InteractionClosedFormTests
{
    private const int Seeds = 8;
    private const double RatioSigma = 0.5;

    [Theory]
    [InlineData("plain", true)]
    [InlineData("plain", false)]
    [InlineData("latin-hypercube", true)]
    [InlineData("latin-hypercube", false)]
    [InlineData("sobol", true)]
    [InlineData("sobol", false)]
    public void The_indices_are_unbiased_and_their_intervals_hold(string sampling, bool isConditional)
    {
        var model = new LifeModel(ThreeLognormals(isConditional));
        Assert.Equal(isConditional, model.Scale.IsLognormal);
        CombineResult[] runs =
        [
            .. Enumerable.Range(1, Seeds).Select(seed => CombineAnalysis.Run(
                model, new StudySettings(8_000, (ulong)seed, sampling), new CombineLimits(), new RunOptions())),
        ];
        foreach (InteractionPair pair in runs[0].Interactions)
        {
            (double second, double shapley) = Expected(model.Scenario, pair.First, pair.Second);
            InteractionPair[] same =
                [.. runs.Select(r => r.Interactions.Single(i => new[] { i.First, i.Second }.ToHashSet()
                .SetEquals([pair.First, pair.Second])))];
            AssertHolds(second, [.. same.Select(i => i.SecondOrder)]);
            AssertHolds(shapley, [.. same.Select(i => i.Shapley)]);
        }
    }

    /// <summary>
    /// Of eight 95 % intervals four miss with a probability of 4e-4 (binomial); their mean lies within four of its standard errors,
    /// a half width being 2.04 of one (Student, 31 degrees of freedom).
    /// </summary>
    private static void AssertHolds(double expected, Interval[] intervals)
    {
        Assert.InRange(intervals.Count(i => i.Low > expected || i.High < expected), 0, 3);
        double se = Math.Sqrt(intervals.Sum(i => Math.Pow((i.High - i.Low) / (2 * 2.04), 2))) / Seeds;
        Assert.Equal(expected, intervals.Average(i => i.Estimate), 4 * se);
    }

    private static Scenario ThreeLognormals(bool isConditional)
    {
        Scenario two = FleetCases.ScaleOnly() with { RequiredKm = 200_000 };
        Value ratio = FleetCases.Lognormal(1, RatioSigma);
        Scenario three = two with
        { Inputs = [.. two.Inputs, new Input("fatigue.damage_ratio", Quantities.DamageRatio, null, ratio, false)] };

        // Cut off at 15 standard deviations the scatter is normal to all digits, but no longer a normal distribution by name:
        // lives are counted.
        return isConditional ? three
            : FleetCases.With(three, Quantities.LifeScatter,
                new Value.Uncertain(new Truncated(new Normal(0, 0.2), -3, 3), Knowledge.Varies));
    }

    private static (double SecondOrder, double Shapley) Expected(Scenario scenario, string first, string second)
    {
        (string Name, double Sigma)[] factors =
            [("fatigue.damage_ratio", RatioSigma), ("fatigue.miner_sum", FleetCases.MinerSigma),
                ("fatigue.log10_life_scatter", FleetCases.ScatterSigma)];
        double variance = factors.Sum(f => f.Sigma * f.Sigma);
        double g = Math.Log(scenario.RequiredKm / FleetCases.MedianLifeKm) / Math.Sqrt(variance);
        double Share(string name) => Math.Pow(factors.Single(f => f.Name == name).Sigma, 2) / variance;
        double Both(double rho) => rho <= 0 ? Math.Pow(StandardNormal.Cumulative(g), 2)
            : rho >= 1 - 1e-12 ? StandardNormal.Cumulative(g)
            : BivariateNormal.Cumulative(g, g, rho);
        double third = Share(factors.Single(f => f.Name != first && f.Name != second).Name);
        (double a, double b, double p) = (Share(first), Share(second), StandardNormal.Cumulative(g));
        double After(double known) => (Both(a + b + known) - Both(a + known) - Both(b + known) + Both(known)) / (p * (1 - p));
        return (After(0), (After(0) + After(third)) / 2);
    }
}
