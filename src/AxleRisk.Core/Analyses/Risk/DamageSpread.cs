using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Outcomes;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>
/// A summary laid out for asking: the bins of damage that hold anything. The replicates of a run share the bins of the whole, whose
/// chances of failure, the dear part, are found once for all of them.
/// </summary>
internal sealed class DamageSpread
{
    private readonly LifeSummary summary;
    private readonly int[] bins;
    private readonly int[] places;
    private readonly double[] damage;
    private readonly double[] counts;
    private LifeCounts? lives;

    /// <summary>Lays a summary out.</summary>
    /// <param name="summary">The summary.</param>
    /// <param name="whole">The spread of a sum that this one is a part of; null where it stands alone.</param>
    public DamageSpread(LifeSummary summary, DamageSpread? whole = null)
    {
        this.summary = summary;
        (int Bin, long Count)[] filled = [.. summary.Damage.Filled];
        bins = [.. filled.Select(b => b.Bin)];
        counts = [.. filled.Select(b => (double)b.Count)];
        places = PlacesIn(whole?.bins ?? bins);
        damage = whole?.damage ?? [.. bins.Select(b => Math.Exp(LogHistogram.LnCentre(b)))];
    }

    public long Evaluations => summary.Evaluations;

    /// <summary>The exact failure probabilities by a distance given the damage of each bin: for this spread and for its parts.</summary>
    public double[] ChancesBy(double km, LifeScale scale)
    {
        if (summary.Modes is not null)
        {
            return [];
        }

        double[] failed = new double[damage.Length];
        VectorColumns.Scale(damage, km, failed);
        new ModeChance.Fatigue(scale).FillHazards(failed, failed);
        VectorColumns.Failed(failed, failed);
        return failed;
    }

    /// <summary>
    /// Sums of the exact failure probabilities given the damage. The middle of a bin stands for its values: the relative error
    /// is (z^2 - 1) (bin width / sigma)^2 / 24, below 1e-4 for z up to 8 and sigma from 0.3.
    /// </summary>
    /// <param name="km">The distance.</param>
    /// <param name="chances">What <see cref="ChancesBy"/> gives for it, of this spread or of the whole it is a part of.</param>
    public PowerSums Failure(double km, double[] chances)
    {
        if (summary.Modes is { } table)
        {
            return new PowerSums(
                Evaluations, Evaluations * table.Mean(table.Failed, Evaluations, km),
                    Evaluations * table.Mean(table.Squares, Evaluations, km));
        }

        // Infinite damage fails for certain, none never.
        double sum = summary.Damage.Above;
        double squares = summary.Damage.Above;
        for (int i = 0; i < counts.Length; i++)
        {
            double failed = chances[places[i]];
            sum += counts[i] * failed;
            squares += counts[i] * failed * failed;
        }

        return new PowerSums(Evaluations, sum, squares);
    }

    /// <summary>The number of lives below a distance; the one bin that the distance divides counts in proportion.</summary>
    public long FailedBy(double km) => (lives ??= new LifeCounts(summary.Life)).Below(km);

    // Both rise, and every bin of a part is one of the whole.
    private int[] PlacesIn(int[] all)
    {
        int[] found = new int[bins.Length];
        for (int i = 0, at = 0; i < bins.Length; i++)
        {
            while (all[at] != bins[i])
            {
                at++;
            }

            found[i] = at;
        }

        return found;
    }
}
