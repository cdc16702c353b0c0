using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>
/// What scales life without touching the damage: the Miner sum and the scatter of the S-N curve,
/// <c>life = Miner sum * 10^scatter / damage per km</c>. Where both are lognormal and independent of everything else,
/// the failure probability given the damage is known exactly, and only the damage need be sampled (conditional Monte Carlo).
/// </summary>
internal sealed class LifeScale
{
    private static readonly double Ln10 = Math.Log(10);

    private readonly ScalePart? miner;
    private readonly ScalePart? scatter;

    private readonly bool alone;

    /// <summary>The scale of a scenario; <paramref name="alone"/> where fatigue is its only mode of failure and nothing ages.</summary>
    internal LifeScale(Scenario scenario, FactorSet factors, bool alone)
    {
        this.alone = alone;
        miner = ScalePart.Of(scenario, factors, Quantities.MinerSum, 1);
        scatter = ScalePart.Of(scenario, factors, Quantities.LifeScatter, Ln10);
    }

    /// <summary>The scale of a section whose damage at failure is lognormal, independent of everything else.</summary>
    internal static LifeScale Of(Lognormal damageAtFailure) => new(
        new ScalePart(null, Math.Log(damageAtFailure.MedianValue), damageAtFailure.StandardDeviationOfLn), new ScalePart(null, 0, 0),
        false);

    private LifeScale(ScalePart? miner, ScalePart? scatter, bool alone)
    {
        this.alone = alone;
        this.miner = miner;
        this.scatter = scatter;
    }

    /// <summary>
    /// Whether life is this scale over one damage per km and the scale is lognormal: <see cref="IsNormalGivenDamage"/>, fatigue the
    /// only mode of failure, and no ageing.
    /// </summary>
    public bool IsLognormal => alone && IsNormalGivenDamage;

    /// <summary>Whether the logarithm of the scale is normal, independent of all other factors, and not certain.</summary>
    public bool IsNormalGivenDamage => miner is not null && scatter is not null && Sigma > 0;

    /// <summary>The mean of ln(Miner sum * 10^scatter), where <see cref="IsNormalGivenDamage"/>.</summary>
    public double Mu => (miner?.Mu ?? double.NaN) + (scatter?.Mu ?? double.NaN);

    /// <summary>The standard deviation of ln(Miner sum * 10^scatter), where <see cref="IsNormalGivenDamage"/>.</summary>
    public double Sigma => Math.Sqrt(Variance(miner) + Variance(scatter));

    /// <summary>The share of the variance of the logarithm that one of the two factors brings; 0 for any other factor.</summary>
    public double VarianceShare(Factor factor) =>
        factor.Name == miner?.FactorName ? Variance(miner) / (Sigma * Sigma)
        : factor.Name == scatter?.FactorName ? Variance(scatter) / (Sigma * Sigma)
        : 0;

    /// <summary>The scale with one of the two factors held at a value in its own unit.</summary>
    public LifeScale Hold(Factor factor, double value) => new(
        factor.Name == miner?.FactorName ? miner.Held(Math.Log(value)) : miner,
        factor.Name == scatter?.FactorName ? scatter.Held(Ln10 * value) : scatter,
        alone);

    /// <summary>Whether a factor is one of the two.</summary>
    public static bool Contains(Factor factor) =>
        factor is ScalarFactor { Input.Quantity: var q } && (q == Quantities.MinerSum || q == Quantities.LifeScatter);

    /// <summary>
    /// The standardised distance of failure before <paramref name="distanceKm"/>:
    /// P(life &lt; distance | damage) = Phi(g), g = (ln distance + ln damage - mu) / sigma.
    /// </summary>
    public double Standardised(double distanceKm, double damagePerKm) =>
        (Math.Log(distanceKm) + Math.Log(damagePerKm) - Mu) / Sigma;

    /// <summary>P(life &lt; distance | damage), exactly; 0 or 1 where nothing is left to chance.</summary>
    public double FailureProbability(double distanceKm, double damagePerKm)
    {
        if (Sigma > 0)
        {
            return StandardNormal.Cumulative(Standardised(distanceKm, damagePerKm));
        }

        return Math.Exp(Mu) / damagePerKm < distanceKm ? 1 : 0;
    }

    private static double Variance(ScalePart? part) => (part?.Sigma ?? 0) * (part?.Sigma ?? 0);

    /// <summary>One of the two factors, as a normal distribution of its part of ln life.</summary>
    private sealed record ScalePart(string? FactorName, double Mu, double Sigma)
    {
        public static ScalePart? Of(Scenario scenario, FactorSet factors, Quantity quantity, double perUnit)
        {
            bool logarithmic = quantity == Quantities.MinerSum;
            Input? input = scenario.Find(quantity);
            double Ln(double value) => logarithmic ? Math.Log(value) : perUnit * value;
            if (input?.Value is not Value.Uncertain uncertain)
            {
                return new ScalePart(null, Ln(input?.Value.Nominal ?? quantity.Default!.Nominal), 0);
            }

            bool independent = factors.IsAlone(factors.Find(input.Name)!);
            return (independent, logarithmic, uncertain.Distribution) switch
            {
                (true, true, Lognormal l) => new ScalePart(input.Name, Math.Log(l.Median), l.StandardDeviationOfLn),
                (true, false, Normal n) => new ScalePart(input.Name, perUnit * n.Mean, perUnit * n.StandardDeviation),
                _ => null,
            };
        }

        public ScalePart Held(double lnValue) => this with { Mu = lnValue, Sigma = 0 };
    }
}
