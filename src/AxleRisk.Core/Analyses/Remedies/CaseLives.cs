using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Remedies;

/// <summary>
/// What is kept of one scenario's evaluations, by group: the damage where failure given the damage is averaged exactly, the
/// life where failures are counted. The groups are the same samples in every scenario; that is what pairs them.
/// </summary>
/// <param name="groups">The number of groups.</param>
/// <param name="scale">The scale of life; null to count failures.</param>
internal sealed class CaseLives(int groups, LifeScale? scale)
{
    private readonly LogHistogram[] byGroup = [.. Enumerable.Range(0, groups).Select(_ => new LogHistogram())];
    private readonly Lock adding = new();

    /// <summary>Adds a block's evaluations, each to its group; from any thread.</summary>
    public void Add(Workspace evaluated, int count, Func<int, int> groupOf)
    {
        double[] numbers = scale is null ? evaluated.LifeKm : evaluated.DamagePerKm;
        lock (adding)
        {
            for (int row = 0; row < count; row++)
            {
                byGroup[groupOf(row)].AddLn(Math.Log(numbers[row]));
            }
        }
    }

    /// <summary>The curve of all groups together and of those that are not empty.</summary>
    public (GroupCurve All, GroupCurve[] Groups) Curves()
    {
        var all = new LogHistogram();
        foreach (LogHistogram group in byGroup)
        {
            all.Add(group);
        }

        return (new GroupCurve(all, scale), [.. byGroup.Where(g => g.Count > 0).Select(g => new GroupCurve(g, scale))]);
    }
}

/// <summary>The share failed over distance, of one group or of all.</summary>
internal sealed class GroupCurve(LogHistogram counts, LifeScale? scale)
{
    private readonly (double LnCentre, long Count)[] bins = [.. counts.Filled.Select(b => (LogHistogram.LnCentre(b.Bin), b.Count))];

    /// <summary>The number of evaluations.</summary>
    public long Evaluations => counts.Count;

    /// <summary>The share failed by a distance, the middle of a bin of damage standing for its values; lives of the bin that the distance divides count in proportion.</summary>
    public double FailedBy(double lnKm)
    {
        double sum = scale is null ? counts.Below : counts.Above;
        foreach ((double lnCentre, long count) in bins)
        {
            double part = scale is null
                ? Math.Clamp(((lnKm - lnCentre) * LogHistogram.BinsPerUnit) + 0.5, 0, 1)
                : StandardNormal.Cumulative((lnKm + lnCentre - scale.Mu) / scale.Sigma);
            sum += count * part;
        }

        return sum / counts.Count;
    }

    /// <summary>The ln of the distance by which a share has failed, to within <paramref name="tolerance"/>; NaN where there is none from 1e-18 to 1e18 km.</summary>
    public double LnKmAt(double share, double tolerance)
    {
        (double low, double high) = (Math.Log(1e-18), Math.Log(1e18));
        if (!(FailedBy(low) <= share && FailedBy(high) >= share))
        {
            return double.NaN;
        }

        while (high - low > tolerance)
        {
            double middle = (low + high) / 2;
            (low, high) = FailedBy(middle) < share ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    /// <summary>Whether two curves rest on the same counts.</summary>
    public bool SameAs(GroupCurve other) => bins.AsSpan().SequenceEqual(other.bins);
}
