using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>
/// Picks, of the combinations found, those worth telling. A combination is listed where every one of its members raises the
/// failure probability above that of the rest of it beyond chance; with the level divided by the number of combinations that
/// could have been claimed (Bonferroni), nothing is listed of pure noise but once in 1 / error rate studies.
/// </summary>
internal sealed class CombinationChoice(GroupSums sums, CombineLimits limits, double possible)
{
    /// <summary>Combinations that share more of the failures of either are near duplicates.</summary>
    private const double SameFailures = 0.5;

    private readonly double critical = -StudentT.Quantile(limits.ErrorRate / Math.Max(1, possible), sums.DegreesOfFreedom);
    private readonly double distinct = -StudentT.Quantile(0.025, sums.DegreesOfFreedom);

    /// <summary>The worst first; at equal probability the fewer members, then the scenario's order.</summary>
    public List<Candidate> Choose(IEnumerable<Candidate> eligible)
    {
        var listed = new List<Candidate>();
        foreach (Candidate candidate in eligible.OrderByDescending(c => c.Probability).ThenBy(c => c.Items.Length))
        {
            if (listed.Count == limits.Listed)
            {
                break;
            }

            if (EveryMemberCounts(candidate.Items) && !listed.Any(l => SaysTheSame(l.Items, candidate.Items)))
            {
                listed.Add(candidate);
            }
        }

        return listed;
    }

    /// <summary>What the members would give if their effects multiplied.</summary>
    public Interval Multiplied(int[] items) => sums.Estimate(Product, Parts(items));

    /// <summary>Whether a combination is worse than that beyond chance.</summary>
    public bool ExceedsParts(int[] items) => items.Length > 1
        && sums.Standardised((n, f) => (f[0] / n[0]) - Product(n[1..], f[1..]), [items, .. Parts(items)]) > critical;

    private static int[][] Parts(int[] items) => [.. items.Select(i => new[] { i })];

    /// <summary>P(F | 1) P(F | 2) ... / P(F)^(k-1); the sums of all rows stand last.</summary>
    private static double Product(double[] rows, double[] failures)
    {
        double all = failures[^1] / rows[^1], product = all;
        for (int i = 0; i < rows.Length - 1; i++)
        {
            product *= failures[i] / rows[i] / all;
        }

        return product;
    }

    private bool EveryMemberCounts(int[] items) =>
        items.All(member => sums.Excess(items, [.. items.Where(i => i != member)]) > critical);

    /// <summary>
    /// Whether two combinations cover mostly the same failures, or are variations of one theme: of three or more members, all
    /// but one the same, and not to be told apart by their probability.
    /// </summary>
    private bool SaysTheSame(int[] listed, int[] items)
    {
        int[] both = [.. listed.Union(items).Order()];
        double shared = sums.Estimate((_, f) => f[0] / (f[1] + f[2] - f[0]), both, listed, items).Estimate;
        return shared > SameFailures
            || (items.Length > 2 && listed.Length == items.Length && both.Length == items.Length + 1
                && !(Math.Abs(sums.Excess(listed, items)) > distinct));
    }
}
