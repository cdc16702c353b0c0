using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Ranking;

/// <summary>
/// What one row adds to the numerators of the Sobol' indices. A and B are two independent samples; mixed is A with the
/// studied factors taken from B. Divided by rows and by the variance of the output, the sums are the indices.
/// </summary>
internal static class SobolTerms
{
    /// <summary>
    /// First order: Saltelli et al. (2010, Computer Physics Communications 181, 259-270, table 2 b). Outputs are best centred.
    /// </summary>
    public static double First(double a, double b, double mixed) => b * (mixed - a);

    /// <summary>Total: Jansen (1999, Computer Physics Communications 117, 35-43).</summary>
    public static double Total(double a, double mixed) => 0.5 * (a - mixed) * (a - mixed);

    /// <summary>
    /// Total index of an event, from the probabilities of it given each row, where the rest of chance is shared by both rows:
    /// they differ with probability |pA - pMixed|. For indicators this is <see cref="Total"/>.
    /// </summary>
    public static double EventTotal(double a, double mixed) => 0.5 * Math.Abs(a - mixed);

    /// <summary>
    /// First order of a normal part of the chance, which brings <paramref name="share"/> of its variance: two rows that share it
    /// alone both fail with Phi2(gA, gB; share).
    /// </summary>
    public static double ScaleFirst(double standardisedA, double standardisedB, double pA, double pB, double share) =>
        BivariateNormal.Cumulative(standardisedA, standardisedB, share) - (pA * pB);

    /// <summary>
    /// Total of a normal part of the chance: two copies of a row that share all but it both fail with Phi2(g, g; 1 - share).
    /// </summary>
    public static double ScaleTotal(double standardised, double p, double share) =>
        p - BivariateNormal.Cumulative(standardised, standardised, 1 - share);
}
