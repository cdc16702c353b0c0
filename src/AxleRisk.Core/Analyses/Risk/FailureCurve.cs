using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>
/// The failure probability at any distance and the life of any failure probability, with 95 % intervals, from the summaries
/// of a run: one summary of independent evaluations, or one a replicate.
/// </summary>
internal sealed class FailureCurve
{
    private const double TwoSided95 = 1.959963984540054;

    private readonly LifeSummary all;
    private readonly DamageSpread[] replicates;
    private readonly DamageSpread pooled;
    private readonly LifeScale? scale;
    private readonly bool isExact;

    /// <summary>Prepares the curve.</summary>
    /// <param name="summaries">The summaries of the replicates, those without evaluations left out.</param>
    /// <param name="scale">The scale of life whose part is averaged exactly; null to count failures.</param>
    /// <param name="isExact">Whether nothing was sampled that could change the answer, so that it has no error of sampling.</param>
    /// <param name="threads">The threads to prepare it on.</param>
    public FailureCurve(IReadOnlyList<LifeSummary> summaries, LifeScale? scale, bool isExact = false, int threads = 1)
    {
        this.isExact = isExact;
        all = LifeSummary.Sum(summaries);
        this.scale = scale;
        pooled = new DamageSpread(all);
        replicates = summaries.Count == 1 ? [pooled]
            : [.. summaries.AsParallel().AsOrdered().WithDegreeOfParallelism(threads).Select(s => new DamageSpread(s, pooled))];
    }

    /// <summary>The summaries together.</summary>
    public LifeSummary All => all;

    private bool HasReplicates => replicates.Length > 1;

    /// <summary>The failure probability by a distance; where few evaluations carry it no estimate (NaN) but a bound.</summary>
    public Interval At(double km)
    {
        if (all.Evaluations == 0)
        {
            return new Interval(double.NaN, double.NaN, double.NaN);
        }

        double[] chances = ChancesBy(km);
        if (isExact && Probability(pooled, km, chances) is var exact)
        {
            return new Interval(exact, exact, exact);
        }

        Interval sampled = Sampled(km, chances);
        return IsCarriedByFew(km, chances) ? FewTerms.Bound(sampled, all.Evaluations) : sampled;
    }

    /// <summary>
    /// The coefficient of variation of the failure probability by a distance; infinite where nothing fails or few evaluations
    /// carry it.
    /// </summary>
    public double CoefficientOfVariation(double km) => ChancesBy(km) is var chances && all.Evaluations > 0 && IsCarriedByFew(km, chances)
        ? double.PositiveInfinity : SampledCov(km, chances);

    private double[] ChancesBy(double km) => scale is null ? [] : pooled.ChancesBy(km, scale);

    private bool IsCarriedByFew(double km, double[] chances) =>
        scale is not null && pooled.Failure(km, chances) is var sums && FewTerms.Carry(sums, sums.Mean);

    private Interval Sampled(double km, double[] chances)
    {
        if (!HasReplicates)
        {
            return scale is null
                ? BinomialInterval.Wilson(pooled.FailedBy(km), all.Evaluations)
                : pooled.Failure(km, chances).PositiveMeanInterval();
        }

        double p = Probability(pooled, km, chances);
        double relative = RelativeErrorOfReplicates(km, p, chances);
        double spread = Math.Exp(-StudentT.Quantile(0.025, replicates.Length - 1) * relative);
        return p > 0 ? new Interval(p, p / spread, Math.Min(1, p * spread)) : BinomialInterval.Wilson(0, all.Evaluations);
    }

    private double SampledCov(double km, double[] chances)
    {
        double p = Probability(pooled, km, chances);
        if (!(p > 0) || all.Evaluations < 2)
        {
            return double.PositiveInfinity;
        }

        return HasReplicates ? RelativeErrorOfReplicates(km, p, chances)
            : scale is null ? Math.Sqrt((1 - p) / (p * all.Evaluations))
            : pooled.Failure(km, chances).StandardError / p;
    }

    /// <summary>
    /// The distance by which a share <paramref name="p"/> has failed. Counted from independent evaluations its interval is
    /// that of order statistics; otherwise the distances where the failure probability's interval ends at p.
    /// </summary>
    public Interval Life(double p)
    {
        if (all.Evaluations == 0)
        {
            return new Interval(double.NaN, double.NaN, double.NaN);
        }

        if (scale is null && !HasReplicates)
        {
            RankInterval ranks = OrderStatistics.QuantileInterval(all.Evaluations, p);
            return new Interval(
                all.Life.ValueOfRank(1 + ((all.Evaluations - 1) * p)), all.Life.ValueOfRank(ranks.Lower),
                    all.Life.ValueOfRank(ranks.Upper));
        }

        double life = KmAt(p);
        double half = (HasReplicates ? -StudentT.Quantile(0.025, replicates.Length - 1) : TwoSided95) * SampledCov(life, ChancesBy(life));
        return new Interval(life, KmAt(p * Math.Exp(-half)), KmAt(p * Math.Exp(half)));
    }

    private double Probability(DamageSpread spread, double km, double[] chances) =>
        scale is null ? (double)spread.FailedBy(km) / spread.Evaluations : spread.Failure(km, chances).Mean;

    private double RelativeErrorOfReplicates(double km, double p, double[] chances)
    {
        RunningMoments moments = default;
        foreach (DamageSpread replicate in replicates)
        {
            moments.Add(Probability(replicate, km, chances));
        }

        return p > 0 ? moments.StandardError / p : double.PositiveInfinity;
    }

    private double KmAt(double p) => Math.Exp(LifeSearch.LnKmAt(
        lnKm => Math.Exp(lnKm) is var km ? Probability(pooled, km, ChancesBy(km)) : double.NaN, p));
}
