using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Outcomes;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>A summary laid out for asking: the bins of damage that hold anything.</summary>
internal sealed class DamageSpread
{
    private readonly LifeSummary summary;
    private readonly double[] damage;
    private readonly double[] counts;
    private LifeCounts? lives;

    public DamageSpread(LifeSummary summary)
    {
        this.summary = summary;
        (int Bin, long Count)[] bins = [.. summary.Damage.Filled];
        damage = [.. bins.Select(b => Math.Exp(LogHistogram.LnCentre(b.Bin)))];
        counts = [.. bins.Select(b => (double)b.Count)];
    }

    public long Evaluations => summary.Evaluations;

    /// <summary>
    /// Sums of the exact failure probabilities given the damage. The middle of a bin stands for its values: the relative error
    /// is (z^2 - 1) (bin width / sigma)^2 / 24, below 1e-4 for z up to 8 and sigma from 0.3.
    /// </summary>
    public PowerSums Failure(double km, LifeScale scale)
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
        double[] failed = new double[damage.Length];
        VectorColumns.Scale(damage, km, failed);
        new ModeChance.Fatigue(scale).FillHazards(failed, failed);
        VectorColumns.Failed(failed, failed);
        for (int i = 0; i < failed.Length; i++)
        {
            sum += counts[i] * failed[i];
            squares += counts[i] * failed[i] * failed[i];
        }

        return new PowerSums(Evaluations, sum, squares);
    }

    /// <summary>The number of lives below a distance; the one bin that the distance divides counts in proportion.</summary>
    public long FailedBy(double km) => (lives ??= new LifeCounts(summary.Life)).Below(km);
}
