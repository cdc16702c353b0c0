using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.RareEvents;

public sealed class RareEventAnalysisTests(ITestOutputHelper output)
{
    private static readonly LifeModel Model = new(FiveLegs.Scenario);

    [Theory]
    [InlineData(5_000)]
    [InlineData(1_000)]
    public void Look(double km)
    {
        var watch = System.Diagnostics.Stopwatch.StartNew();
        RareEventResult r = RareEventAnalysis.Run(Model, km, new RareEventSettings(1) { TargetCov = 0.05, MaxEvaluations = 20_000, CrossCheck = true }, new RunOptions());
        output.WriteLine($"LOOK {km}: {r.Probability} cov {r.Cov:F4} search {r.SearchEvaluations} sampling {r.SamplingEvaluations} ess {r.EffectiveSize:F0} largest {r.LargestShare:F3} {watch.ElapsedMilliseconds} ms");
        output.WriteLine($"LOOK {r.Method}: {r.MethodReason}. {r.Doubt}");
        output.WriteLine($"LOOK check {r.CrossCheck} {r.CrossCheckDistance}");
        foreach (DesignPointReport p in r.States[0].DesignPoints)
        {
            output.WriteLine($"LOOK beta {p.Beta}: {string.Join("; ", p.Coordinates)}");
        }
    }
}
