using System.Collections.Immutable;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>Failure probability over distance, lives and damage by leg, by sampling.</summary>
public static class RiskAnalysis
{
    /// <summary>The evaluations of a run unless asked otherwise.</summary>
    public const long DefaultEvaluations = 100_000;

    /// <summary>The distances of the table, as multiples of the required distance.</summary>
    private static readonly ImmutableArray<double> DistanceMultiples = [0.1, 0.2, 0.4, 0.6, 0.8, 1, 1.5, 2, 3, 5];

    private static readonly ImmutableArray<double> LifePercents = [1, 5, 10, 50];

    /// <summary>Runs the analysis.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="settings">Evaluations, seed, sampling plan.</param>
    /// <param name="method">How to estimate the probabilities.</param>
    /// <param name="distancesKm">The distances of the table; multiples of the required distance where empty.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <exception cref="ArgumentException"><see cref="RiskMethod.Conditional"/> was asked for where the scenario does not allow it.</exception>
    public static RiskResult Run(
        LifeModel model, StudySettings settings, RiskMethod method, ImmutableArray<double> distancesKm, RunOptions options)
    {
        double required = model.Scenario.RequiredKm;
        (RiskMethod used, string reason) = Choose(model, method);
        double[] distances = [.. (distancesKm.IsDefaultOrEmpty ? DistanceMultiples.Select(m => m * required) : distancesKm)
            .Append(required).Distinct().Order()];
        var tally = new RiskTally(model, settings, used, distances);
        BlockRun<RiskBlock> run = BlockRunner.Run(
            settings.Evaluations, StudySettings.BlockSize, options, tally.CreateWorker, tally.Work);
        long n = run.Rows;
        ImmutableArray<DistanceRisk> risks = [.. distances.Select((d, i) => new DistanceRisk(d, ProbabilityOf(run, i, used)))];
        double[] lives = [.. run.Blocks.SelectMany(b => b.LivesKm)];
        Array.Sort(lives);
        return new RiskResult
        {
            RequiredKm = required,
            AtRequired = risks.Single(r => r.DistanceKm == required),
            Distances = risks,
            Lives = [.. LifePercents.Select(p => new LifeQuantile(p, LifeOf(lives, p / 100)))],
            MedianFactorsLifeKm = BaseCaseAnalysis.MedianFactorsLifeKm(model),
            Legs = [.. model.Scenario.Legs.Select((leg, i) => new LegDamage(leg.Name, MeanOf(run, b => b.LegShare[i])))],
            Method = used,
            MethodReason = reason,
            Run = new RunRecord(n, settings.Evaluations, settings.Seed, settings.Sampling, LifeModel.Version, run.IsPartial),
        };
    }

    private static (RiskMethod Method, string Reason) Choose(LifeModel model, RiskMethod asked)
    {
        const string Exact = "Miner sum and S-N scatter are lognormal and independent, so their part is averaged exactly";
        const string Counted = "Miner sum and S-N scatter are not both lognormal and independent, so failures are counted";
        return (asked, model.Scale.IsLognormal) switch
        {
            (RiskMethod.Crude, _) => (RiskMethod.Crude, "failures are counted, as asked"),
            (_, true) => (RiskMethod.Conditional, Exact),
            (RiskMethod.Auto, false) => (RiskMethod.Crude, Counted),
            _ => throw new ArgumentException("the conditional method needs a lognormal Miner sum and a normal scatter of log10 N, both independent of all else"),
        };
    }

    private static Interval ProbabilityOf(BlockRun<RiskBlock> run, int distance, RiskMethod method) =>
        method == RiskMethod.Crude
            ? BinomialInterval.Wilson((long)run.Blocks.Sum(b => b.Failure[distance].Sum), run.Rows)
            : Total(run, b => b.Failure[distance]).PositiveMeanInterval();

    private static Interval MeanOf(BlockRun<RiskBlock> run, Func<RiskBlock, PowerSums> part) => Total(run, part).MeanInterval();

    private static PowerSums Total(BlockRun<RiskBlock> run, Func<RiskBlock, PowerSums> part) =>
        run.Blocks.Aggregate(default(PowerSums), (sum, b) => sum.Plus(part(b)));

    private static Interval LifeOf(double[] sorted, double p)
    {
        if (sorted.Length == 0)
        {
            return new Interval(double.NaN, double.NaN, double.NaN);
        }

        // Ranks outside the sample mean that it is too small to bound the quantile on that side.
        RankInterval ranks = OrderStatistics.QuantileInterval(sorted.Length, p);
        double At(long rank) => rank >= 1 && rank <= sorted.Length ? sorted[rank - 1] : double.NaN;
        return new Interval(OrderStatistics.Quantile(sorted, p), At(ranks.Lower), At(ranks.Upper));
    }
}
