using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Remedies;

/// <summary>
/// What is kept of one scenario's evaluations, by group: of fatigue alone the damage where failure given the damage is averaged
/// exactly; of several
/// modes or ageing the averages at fixed distances; the life where failures are counted. The groups are the same samples in every
/// scenario; that is
/// what pairs them.
/// </summary>
/// <param name="model">The scenario made ready.</param>
/// <param name="distanceKm">The distance that probabilities are told of.</param>
/// <param name="groups">The number of groups.</param>
/// <param name="conditional">Whether what is left to chance is averaged exactly.</param>
internal sealed class CaseLives(LifeModel model, double distanceKm, int groups, bool conditional)
{
    private readonly bool hasTables = conditional && !model.Modes.IsPlain;
    private readonly LogHistogram[] numbers = [.. Enumerable.Range(0, groups).Select(_ => new LogHistogram())];
    private readonly ModeTable[] tables = [.. Enumerable.Range(0, conditional && !model.Modes.IsPlain ? groups : 0)
        .Select(_ => NewTable(model, distanceKm))];
    private readonly Lock adding = new();

    /// <summary>Adds a block's evaluations, each to its group; from any thread.</summary>
    public void Add(Workspace evaluated, int count, Func<int, int> groupOf)
    {
        int[] group = [.. Enumerable.Range(0, count).Select(groupOf)];
        double[][] failed = hasTables ? FailedByNode(evaluated, count, group) : [];
        double[] added = conditional ? evaluated.DamagePerKm : evaluated.LifeKm;
        lock (adding)
        {
            for (int row = 0; row < count; row++)
            {
                numbers[group[row]].AddLn(Math.Log(added[row]));
            }

            for (int g = 0; g < failed.Length; g++)
            {
                for (int node = 0; node < tables[0].Count; node++)
                {
                    tables[g].Failed[node] = tables[g].Failed[node].Plus(failed[g][node]);
                }
            }
        }
    }

    /// <summary>The curve of all groups together and of those that are not empty.</summary>
    public (GroupCurve All, GroupCurve[] Groups) Curves()
    {
        var all = new LogHistogram();
        ModeTable allFailed = NewTable(model, distanceKm);
        foreach (LogHistogram group in numbers)
        {
            all.Add(group);
        }

        foreach (ModeTable table in tables)
        {
            allFailed.Add(table);
        }

        GroupCurve Curve(LogHistogram counts, ModeTable? table) => new(counts, conditional ? model.Scale : null, hasTables ? table : null);
        return (Curve(all, allFailed), [.. numbers.Select((n, g) => Curve(n, hasTables ? tables[g] : null)).Where(c => c.Evaluations > 0)]);
    }

    private static ModeTable NewTable(LifeModel model, double distanceKm) => new(distanceKm, modes: 0, Stretches.BendsKm(model.Scenario));

    // The sums of a block's rows, by group and distance.
    private double[][] FailedByNode(Workspace evaluated, int count, int[] group)
    {
        double[][] sums = Workspace.Columns(groups, tables[0].Count);
        var failed = new double[count];
        for (int node = 0; node < tables[0].Count; node++)
        {
            model.Chances.FillFailureProbabilities(evaluated, count, 0, tables[0].Km(node), failed);
            for (int row = 0; row < count; row++)
            {
                sums[group[row]][node] += failed[row];
            }
        }

        return sums;
    }
}

/// <summary>The share failed over distance, of one group or of all.</summary>
/// <param name="counts">Damages, or lives where failures are counted.</param>
/// <param name="scale">The scale of life; null where failures are counted.</param>
/// <param name="table">The sums at fixed distances where they are kept.</param>
internal sealed class GroupCurve(LogHistogram counts, LifeScale? scale, ModeTable? table)
{
    private readonly (double LnCentre, long Count)[] bins = [.. counts.Filled.Select(b => (LogHistogram.LnCentre(b.Bin), b.Count))];

    /// <summary>The number of evaluations.</summary>
    public long Evaluations => counts.Count;

    /// <summary>
    /// The share failed by a distance, the middle of a bin of damage standing for its values; lives of the bin that the distance
    /// divides count in proportion.
    /// </summary>
    public double FailedBy(double lnKm)
    {
        if (table is not null)
        {
            return table.Mean(table.Failed, counts.Count, Math.Exp(lnKm));
        }

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

    /// <summary>The ln of the distance by which a share has failed, as <see cref="LifeSearch"/> finds it.</summary>
    public double LnKmAt(double share) => LifeSearch.LnKmAt(FailedBy, share);

    /// <summary>Whether two curves rest on the same counts.</summary>
    public bool SameAs(GroupCurve other) => bins.AsSpan().SequenceEqual(other.bins);
}
