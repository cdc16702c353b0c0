using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>
/// 95 % intervals contain the truth in 95 % of runs, not in fewer and not in all, where the life is lognormal (<see cref="LogLinear"/>).
/// The larger study, with its table, is the benchmarks' command <c>coverage</c>.
/// </summary>
public sealed class IntervalCoverageTests
{
    private const int Seeds = 300;
    private static readonly double Km = LogLinear.KmOf(0.04);

    // Of 300 at 95 %, binomial: 270 to 297 with 99.97 %. At 99.99 %, as of intervals twice as wide, 300 or 299 would be.
    private const int Fewest = 270;
    private const int Most = 297;

    [Theory]
    [InlineData(RiskMethod.Crude, "plain", 800)]
    [InlineData(RiskMethod.Crude, "sobol", 1_024)]
    [InlineData(RiskMethod.Conditional, "plain", 256)]
    [InlineData(RiskMethod.Conditional, "latin-hypercube", 512)]
    [InlineData(RiskMethod.Conditional, "sobol", 512)]
    public void Intervals_hold_the_truth_as_often_as_they_say(RiskMethod method, string sampling, int evaluations)
    {
        RiskResult[] runs =
        [
            .. Enumerable.Range(1, Seeds).Select(seed => RiskAnalysis.Run(
                LogLinear.Model, new StudySettings(evaluations, (ulong)seed, sampling),
                new RiskQuestion { Method = method, DistancesKm = [Km] }, new RunOptions { Threads = 1 }).Result),
        ];
        Count(LogLinear.Probability(Km), runs.Select(r => r.Distances.Single(d => d.DistanceKm == Km).Probability));
        Count(LogLinear.KmOf(0.1), runs.Select(r => r.Lives.Single(l => l.Percent == 10).LifeKm));
        Count(LogLinear.MedianKm, runs.Select(r => r.Lives.Single(l => l.Percent == 50).LifeKm));
    }

    private static void Count(double truth, IEnumerable<Interval> intervals) =>
        Assert.InRange(intervals.Count(i => i.Low <= truth && truth <= i.High), Fewest, Most);
}
