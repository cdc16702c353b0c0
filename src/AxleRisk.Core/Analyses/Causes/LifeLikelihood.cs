using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>
/// How likely what is known of the life is, given the damage. Where ln scale is normal (mean mu, standard deviation sigma),
/// life is lognormal given the damage and z = (ln distance + ln damage - mu) / sigma is standard normal: a failure at the
/// distance has density phi(z) / (sigma distance), one before it Phi(z). Elsewhere life is a number and is counted.
/// </summary>
internal static class LifeLikelihood
{
    /// <summary>A stated failure distance is taken to this relative accuracy where life cannot be given a density.</summary>
    public const double CountedTolerance = 0.025;

    /// <summary>ln likelihood given the damage, up to a constant, where the scale is lognormal.</summary>
    public static double Log(LifeEvidence? life, LifeScale scale, double damagePerKm) => life switch
    {
        LifeEvidence.FailedAt(var km) => -0.5 * Square(scale.Standardised(km, damagePerKm)),
        LifeEvidence.FailedBetween(var from, var to) =>
            LogBetween(scale.Standardised(from, damagePerKm), scale.Standardised(to, damagePerKm)),
        LifeEvidence.Survived(var km) => Math.Log(StandardNormal.Upper(scale.Standardised(km, damagePerKm))),
        _ => 0,
    };

    /// <summary>0 where a counted life agrees with the evidence, negative infinity where it does not.</summary>
    public static double LogCounted(LifeEvidence? life, double lifeKm) => life switch
    {
        LifeEvidence.FailedAt(var km) => Inside(km * (1 - CountedTolerance), km * (1 + CountedTolerance), lifeKm),
        LifeEvidence.FailedBetween(var from, var to) => Inside(from, to, lifeKm),
        LifeEvidence.Survived(var km) => lifeKm >= km ? 0 : double.NegativeInfinity,
        _ => 0,
    };

    /// <summary>
    /// The standard score of ln scale given the damage and the evidence, by its exact conditional distribution: known
    /// where the distance is, else the quantile of <paramref name="uniform"/> in what the evidence leaves.
    /// </summary>
    public static double DrawScore(LifeEvidence? life, LifeScale scale, double damagePerKm, double uniform) => life switch
    {
        LifeEvidence.FailedAt(var km) => scale.Standardised(km, damagePerKm),
        LifeEvidence.FailedBetween(var from, var to) =>
            QuantileBetween(scale.Standardised(from, damagePerKm), scale.Standardised(to, damagePerKm), uniform),
        LifeEvidence.Survived(var km) => QuantileBetween(scale.Standardised(km, damagePerKm), double.PositiveInfinity, uniform),
        _ => StandardNormal.Quantile(uniform),
    };

    private static double Square(double z) => z * z;

    private static double Inside(double from, double to, double lifeKm) => lifeKm >= from && lifeKm < to ? 0 : double.NegativeInfinity;

    /// <summary>ln(Phi(b) - Phi(a)), from the tail that keeps the digits.</summary>
    private static double LogBetween(double a, double b) => Math.Log(
        a > 0 ? StandardNormal.Upper(a) - StandardNormal.Upper(b) : StandardNormal.Cumulative(b) - StandardNormal.Cumulative(a));

    /// <summary>The score between two at a share of the probability that lies there.</summary>
    public static double QuantileBetween(double a, double b, double uniform)
    {
        if (a > 0)
        {
            return -QuantileBetween(-b, -a, 1 - uniform);
        }

        double low = StandardNormal.Cumulative(a), high = StandardNormal.Cumulative(b);
        return Math.Clamp(StandardNormal.Quantile(low + (uniform * (high - low))), a, b);
    }
}
