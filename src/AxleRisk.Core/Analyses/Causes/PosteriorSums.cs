using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>What the groups of a posterior run say together; intervals are the jackknife's, 95 %.</summary>
internal sealed class PosteriorSums(PosteriorTally[] groups)
{
    /// <summary>The score beyond which an adverse tenth lies.</summary>
    public static readonly double TenthScore = StandardNormal.Quantile(0.9);

    private readonly double weight = groups.Sum(g => g.Weight);

    /// <summary>The number of rows.</summary>
    public long Rows => groups.Sum(g => g.Rows);

    /// <summary>(sum of weights)^2 / sum of squared weights (Kong 1992).</summary>
    public double EffectiveSize => weight > 0 ? weight * weight / groups.Sum(g => g.Squares) : 0;

    /// <summary>The share of all weight in the heaviest row.</summary>
    public double GreatestShare => groups.Max(g => g.Greatest) / weight;

    /// <summary>The probability of an item's state.</summary>
    public Interval State(int item, int state) => Of(g => g.Items[item][state]);

    /// <summary>The probability of one end of a continuous item: beyond a normal score, above it or below its mirror image.</summary>
    public Interval Tail(int item, bool high, double score) =>
        Of(g => Mass(g.Items[item], high ? score : double.NegativeInfinity, high ? double.PositiveInfinity : -score));

    /// <summary>The normal score below which the share <paramref name="p"/> of a continuous item's weight lies.</summary>
    public double QuantileScore(int item, double p)
    {
        double left = p * groups.Sum(g => g.Items[item].Sum());
        for (int bin = 0; bin < PosteriorTally.Bins; bin++)
        {
            double here = groups.Sum(g => g.Items[item][bin]);
            if (here > 0 && left <= here)
            {
                return PosteriorTally.Edge(bin + (left / here));
            }

            left -= here;
        }

        return PosteriorTally.Edge(PosteriorTally.Bins);
    }

    /// <summary>The sums of the patterns of events, one vector a group.</summary>
    public double[][] Patterns => [.. groups.Select(g => g.Patterns)];

    /// <summary>The sums of the patterns in which a twin passes, one vector a group.</summary>
    public double[][] TwinPasses(int twin) => [.. groups.Select(g => g.TwinPasses[twin])];

    /// <summary>The sums of the patterns in which a twin has failed as the axle had, one vector a group.</summary>
    public double[][] TwinFails(int twin) => [.. groups.Select(g => g.TwinFails[twin])];

    /// <summary>A ratio of sums with its interval; of what was never seen the interval reaches up to three effective rows.</summary>
    public Interval Of(Func<PosteriorTally, double> part) =>
        Bounded(Jackknife.Estimate([.. groups.Select(g => new[] { part(g), g.Weight })], s => s[0] / s[1]));

    /// <summary>
    /// Keeps the interval of a probability inside 0 to 1, and honest at its ends: three rows, each of as much weight as one
    /// may have in units of the mean (rule of three: Hanley and Lippman-Hand 1983).
    /// </summary>
    public Interval Bounded(Interval p, double greatestWeight = 1)
    {
        double least = Math.Min(1, 3 * greatestWeight / Math.Max(3, EffectiveSize));
        return new Interval(
            Math.Clamp(p.Estimate, 0, 1),
            p.Estimate >= 1 ? 1 - least : Math.Clamp(p.Low, 0, 1),
            p.Estimate <= 0 ? least : Math.Clamp(p.High, 0, 1));
    }

    /// <summary>The weight between two scores; a bin that is cut counts in proportion.</summary>
    private static double Mass(double[] bins, double from, double to)
    {
        double sum = 0;
        for (int bin = 0; bin < bins.Length; bin++)
        {
            double low = Math.Max(from, PosteriorTally.Edge(bin)), high = Math.Min(to, PosteriorTally.Edge(bin + 1));
            sum += high > low ? bins[bin] * (high - low) / (PosteriorTally.Edge(bin + 1) - PosteriorTally.Edge(bin)) : 0;
        }

        return sum;
    }
}
