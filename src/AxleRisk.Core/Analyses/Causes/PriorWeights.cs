namespace AxleRisk.Core.Analyses.Causes;

/// <summary>
/// Prior weights on events. Each event with a stated prior has its odds multiplied by one factor, the factors chosen so
/// that all stated priors hold at once: of all distributions that meet them the one nearest to the scenario's
/// (iterative proportional fitting, Deming and Stephan 1940). Given which events hold, nothing else changes.
/// </summary>
internal static class PriorWeights
{
    private const int MostRounds = 10_000;
    private const double Accuracy = 1e-10;

    /// <summary>The factor of each pattern of events; null where no distribution meets the priors.</summary>
    /// <param name="patterns">The probability of each pattern under the scenario, summing to 1.</param>
    /// <param name="priors">The priors of the events, in the order of the patterns' bits; null where none is stated.</param>
    public static double[]? Of(double[] patterns, double?[] priors)
    {
        var odds = new double[priors.Length];
        Array.Fill(odds, 1);
        for (int round = 0; round < MostRounds; round++)
        {
            double worst = 0;
            for (int e = 0; e < priors.Length; e++)
            {
                if (priors[e] is not { } wanted)
                {
                    continue;
                }

                double now = Probability(patterns, FactorsOf(odds, patterns.Length), 1 << e);
                if (!(now > 0 && now < 1))
                {
                    return null;
                }

                worst = Math.Max(worst, Math.Abs(now - wanted));
                odds[e] *= wanted / (1 - wanted) * (1 - now) / now;
            }

            if (worst < Accuracy)
            {
                return FactorsOf(odds, patterns.Length);
            }
        }

        return null;
    }

    /// <summary>
    /// The probability that all events of a mask hold, patterns weighted by factors; mask 0: that none of <paramref name="of"/>
    /// holds.
    /// </summary>
    public static double Probability(double[] patterns, double[] factors, int mask, int of = -1)
    {
        double sum = 0, total = 0;
        for (int s = 0; s < patterns.Length; s++)
        {
            double w = patterns[s] * factors[s];
            total += w;
            sum += (mask == 0 ? (s & of) == 0 : (s & mask) == mask) ? w : 0;
        }

        return sum / total;
    }

    private static double[] FactorsOf(double[] odds, int patterns)
    {
        var factors = new double[patterns];
        for (int s = 0; s < patterns; s++)
        {
            factors[s] = 1;
            for (int e = 0; e < odds.Length; e++)
            {
                factors[s] *= (s >> e & 1) == 1 ? odds[e] : 1;
            }
        }

        return factors;
    }
}
