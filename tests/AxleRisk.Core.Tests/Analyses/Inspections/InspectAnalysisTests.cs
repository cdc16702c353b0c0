using AxleRisk.Core.Analyses.Inspections;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Inspections;

/// <summary>
/// One factor that scales the damage of every vehicle and the scatter of each: all figures by quadrature over the factor and the chain of a
/// single vehicle, which has tests of its own.
/// </summary>
public sealed class InspectAnalysisTests
{
    private static readonly InspectionMethod Dye = new("dye", new DetectionCurve(1.5, 4), 0.03, 20, []);
    private static readonly InspectionMethod Eddy = new("eddy current", new DetectionCurve(0.6, 1.2), 0.05, 60, []);
    private static readonly double End = LogLinear.MedianKm;

    [Fact]
    public void Stated_looks_have_the_figures_of_quadrature()
    {
        double[] at = [0.4 * End, 0.7 * End];
        InspectResult result = Run(Scenario(Dye with { AtKm = [.. at] }), 8192);
        Assert.True(result.IsStated && result.IsExact);
        double failed = Mean(c => c.Fails[0] + c.Fails[1] + c.Fails[2], at);
        Within(failed, result.WithPlan[^1].Failed);
        Within(LogLinear.Probability(End), result.WithoutPlan[^1].Failed);
        for (int look = 0; look < 2; look++)
        {
            InspectedLook told = result.Looks[look];
            Assert.Equal((at[look], "dye"), (told.Km, told.Method));
            Within(Mean(c => c.Found[look], at), told.Found);
            Within(Mean(c => c.Missed[look], at), told.Missed);
            Within(0.03 * Mean(c => c.Unfound[look], at), told.FalseCalls);
            Within(Mean(c => c.CleanFails[look + 1], at) / Mean(c => c.Clean[look], at), told.FailureBeforeNext);
        }

        // 20 a look, 100 a repair, 5 a false call, 1000 a failure.
        double cost = Mean(c => 1000 * (c.Fails[0] + c.Fails[1] + c.Fails[2]) + Enumerable.Range(0, 2).Sum(
            k => (20 * (c.Found[k] + c.Unfound[k])) + (100 * c.Found[k]) + (5 * 0.03 * c.Unfound[k])), at);
        Within(cost, result.Cost!.Value);
        Within(1000 * LogLinear.Probability(End), result.CostWithout!.Value);
    }

    [Fact]
    public void The_fewest_looks_keep_the_target_and_one_less_does_not()
    {
        Scenario scenario = Scenario(Eddy) with { InspectionTerms = new InspectionTerms { Target = 0.05 } };
        InspectResult result = Run(scenario, 1024);
        PlannedLooks plan = result.Plan!;
        Assert.Equal((PlanAim.Fewest, false), (plan.Aim, result.IsStated));
        Assert.Equal(plan.Looks, result.Looks.Length);
        Assert.InRange(plan.Greatest.Estimate, 0.02, 0.05 + 1e-9);
        Assert.Equal(LogLinear.KmOf(0.05), plan.FirstKm!.Value, 0.03 * LogLinear.KmOf(0.05));
        Assert.Equal(End, plan.FirstKm!.Value + (plan.Looks * plan.EveryKm!.Value), 1e-6 * End);
        Assert.True(plan.Looks > 1);
        double every = (End - plan.FirstKm.Value) / (plan.Looks - 1);
        double[] at = [.. Enumerable.Range(0, plan.Looks - 1).Select(i => plan.FirstKm.Value + (i * every))];
        InspectResult less = Run(scenario with { Inspections = [Eddy with { AtKm = [.. at] }] }, 1024);
        Assert.True(less.Greatest.Estimate > 0.05);
    }

    [Fact]
    public void The_cheapest_plan_costs_no_more_than_its_neighbours_or_none()
    {
        InspectResult result = Run(Scenario(Dye), 512);
        PlannedLooks plan = result.Plan!;
        Assert.Equal(PlanAim.Cheapest, plan.Aim);
        double cost = plan.Cost!.Value.Estimate;
        Assert.True(cost < result.CostWithout!.Value.Estimate);
        foreach ((double shift, int more) in (ReadOnlySpan<(double, int)>)[(-0.1, 0), (0.1, 0), (0, 1), (0, -1)])
        {
            double first = plan.FirstKm!.Value + (shift * End);
            int looks = plan.Looks + more;
            double every = (End - first) / Math.Max(1, looks);
            double[] at = [.. Enumerable.Range(0, looks).Select(i => first + (i * every))];
            InspectResult other = Run(Scenario(Dye with { AtKm = [.. at] }), 512);
            Assert.True(other.Cost is not { } c || c.Estimate >= cost - 1e-9, $"{shift} {more}: {other.Cost} below {cost}");
        }
    }

    [Fact]
    public void Methods_are_planned_side_by_side()
    {
        Scenario scenario = Scenario(Dye) with { Inspections = [Dye, Eddy] };
        InspectResult result = Run(scenario with { InspectionTerms = scenario.InspectionTerms with { Target = 0.1 } }, 512);
        Assert.Equal(
            [("dye", PlanAim.Fewest), ("dye", PlanAim.Cheapest), ("eddy current", PlanAim.Fewest), ("eddy current", PlanAim.Cheapest)],
            result.Plans.Select(p => (p.Method, p.Aim)));
        Assert.True(result.Plans[2].Looks <= result.Plans[0].Looks); // it finds more
        Assert.True(result.Plan!.Greatest.Estimate <= 0.1 + 1e-9);
    }

    /// <summary>A life whose scatter is not lognormal is drawn; of a normal one cut at 8 standard deviations it is the same.</summary>
    [Fact]
    public void Drawn_lives_agree_with_those_integrated_over()
    {
        double[] at = [0.4 * End, 0.7 * End];
        Scenario exact = Scenario(Dye with { AtKm = [.. at] }) with { InspectionTerms = new() }; // nothing is planned
        Scenario drawn = exact with
        {
            Inputs =
            [
                .. exact.Inputs.Select(i => i.Quantity == Quantities.LifeScatter && i.Value is Value.Uncertain u
                    ? i with { Value = u with { Distribution = new Truncated(u.Distribution, -1.6, 1.6) } } : i),
            ],
        };
        (InspectResult a, InspectResult b) = (Run(exact, 8192), Run(drawn, 65_536));
        Assert.True(a.IsExact && !b.IsExact);
        for (int look = 0; look < 2; look++)
        {
            Near(a.Looks[look].Found, b.Looks[look].Found);
            Near(a.Looks[look].Missed, b.Looks[look].Missed);
            Near(a.Looks[look].FailureBeforeNext, b.Looks[look].FailureBeforeNext);
        }

        Near(a.WithPlan[^1].Failed, b.WithPlan[^1].Failed);
        static void Near(Interval x, Interval y) => Assert.InRange(
            y.Estimate, x.Estimate - (1.5 * (x.High - x.Low + y.High - y.Low)), x.Estimate + (1.5 * (x.High - x.Low + y.High - y.Low)));
    }

    [Fact]
    public void Further_modes_fail_beside_the_crack_and_threads_do_not_show()
    {
        Scenario scenario = ThreeModes.With(ThreeModes.Scenario, (Quantities.InitialDepth, new Value.Certain(0.2))) with
        { Crack = new Crack(), Inspections = [Dye with { AtKm = [20_000, 35_000] }] };
        InspectResult one = Run(scenario, 1024, 1), two = Run(scenario, 1024, 3);
        Assert.Equal(one.WithPlan, two.WithPlan);
        Assert.Equal(one.Looks, two.Looks);
        Assert.True(one.WithPlan[^1].Failed.Estimate < one.WithoutPlan[^1].Failed.Estimate);
        Assert.Equal(one.WithPlan[0].Failed.Estimate, one.WithoutPlan[0].Failed.Estimate, 1e-6); // before the first look
    }

    private static Scenario Scenario(InspectionMethod method) => LogLinear.Scenario with
    {
        RequiredKm = End,
        Crack = new Crack(),
        Inputs = [.. LogLinear.Scenario.Inputs, new("crack.initial_depth_mm", Quantities.InitialDepth, null, new Value.Certain(0.2), false)],
        Inspections = [method],
        InspectionTerms = new InspectionTerms { RepairCost = 100, FalseCallCost = 5, FailureCost = 1000 },
    };

    private static InspectResult Run(Scenario scenario, long evaluations, int threads = 2)
    {
        var model = new LifeModel(scenario);
        return InspectAnalysis.Run(
            model, new StudySettings(evaluations, 5, InspectAnalysis.DefaultSampling(model)), new RunOptions { Threads = threads });
    }

    // By 400 even steps of the ratio's standard normal score.
    private static double Mean(Func<InspectionChain, double> of, double[] at)
    {
        var chain = new InspectionChain(at.Length + 1);
        double wall = LogLinear.Scenario.Find(Quantities.Wall)!.Value.Nominal, sum = 0;
        for (int i = 0; i < 400; i++)
        {
            double t = -8 + (16 * (i + 0.5) / 400);
            for (int k = 0; k <= at.Length; k++)
            {
                chain.Used[k] = k < at.Length ? at[k] : End;
                chain.Looks[k] = k < at.Length ? Dye.Detection : null;
                chain.OthersSurvive[k] = 1;
            }

            chain.FromScratch.AsSpan().Fill(Math.Log(LogLinear.MedianKm) - (LogLinear.RatioSigma * t));
            chain.Fill(LogLinear.ScaleSigma, new(0.2, wall, 3));
            sum += 16.0 / 400 * StandardNormal.Density(t) * of(chain);
        }

        return sum;
    }

    private static void Within(double truth, Interval told) =>
        Assert.InRange(truth, told.Estimate - (2 * (told.High - told.Low)) - 1e-9, told.Estimate + (2 * (told.High - told.Low)) + 1e-9);
}
