using AxleRisk.Core.Analyses.Inspections;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Inspections;

/// <summary>Inspections of a vehicle that was seen, against single lives with every look and repair drawn.</summary>
public sealed class SeenInspectTests
{
    private static readonly double M = LogLinear.MedianKm;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Looks_from_where_the_vehicle_was_seen_are_those_of_single_lives(bool isDrawn)
    {
        Evidence evidence = SeenLives.Clean(0.35 * M, 0.2 * M, 0.32 * M);
        double[] at = [0.45 * M, 0.6 * M], ends = [.. at, 0.75 * M];
        Scenario scenario = SeenLives.Scenario(evidence) with
        {
            RequiredKm = ends[^1],
            Inspections = [SeenLives.Dye with { AtKm = [0.1 * M, .. at] }], // the first is in the past
            InspectionTerms = new InspectionTerms { RepairCost = 100, FalseCallCost = 5, FailureCost = 1000, RepairedLife = 0.8 },
        };
        scenario = !isDrawn ? scenario : scenario with
        {
            Inputs = [.. scenario.Inputs.Select(i => i.Quantity == Quantities.LifeScatter && i.Value is Value.Uncertain u
                ? i with { Value = u with { Distribution = new Truncated(u.Distribution, -1.6, 1.6) } } : i)],
        };
        InspectResult result = Run(scenario, isDrawn ? 65_536 : 8_192);
        Assert.Equal((evidence, 0.35 * M, !isDrawn), (result.Seen, result.FromKm, result.IsExact));
        Assert.Equal(at, result.Looks.Select(l => l.Km));
        (double known, double without, double with) = (0, 0, 0);
        double[] found = new double[2], missed = new double[2], clean = new double[2], cleanFails = new double[2];
        SeenLives.Draw(evidence, 300_000, (life, median, uniform) =>
        {
            known++;
            without += life <= ends[2] ? 1 : 0;
            double from = 0;
            bool isNew = false;
            for (int k = 0; k < 3; k++)
            {
                double x = (ends[k] - from) / life;
                if (x >= 1)
                {
                    with++;
                    cleanFails[Math.Max(0, k - 1)] += !isNew && k > 0 ? 1 : 0;
                    break;
                }

                if (k == 2)
                {
                    break;
                }

                bool isFound = uniform(k) < SeenLives.Finds(x);
                found[k] += isFound ? 1 : 0;
                missed[k] += !isFound && SeenLives.Finds(x) >= 0.5 ? 1 : 0;
                (from, life) = isFound
                    ? (ends[k], 0.8 * median * Math.Exp(LogLinear.ScaleSigma * StandardNormal.Quantile(uniform(3 + k)))) : (from, life);
                isNew |= isFound;
                clean[k] += isNew ? 0 : 1;
            }
        });
        SeenLives.Within(result.WithoutPlan[^1].Failed, without, known);
        SeenLives.Within(result.WithPlan[^1].Failed, with, known);
        for (int k = 0; k < 2; k++)
        {
            SeenLives.Within(result.Looks[k].Found, found[k], known);
            SeenLives.Within(result.Looks[k].Missed, missed[k], known);
            SeenLives.Within(result.Looks[k].FailureBeforeNext, cleanFails[k], clean[k]);
        }

        Interval cost = result.Cost!.Value, none = result.CostWithout!.Value;
        Assert.Equal(1000 * without / known, none.Estimate, none.High - none.Low + 3);
        double mean = ((1000 * with) + (100 * found.Sum())) / known;
        Assert.InRange(cost.Estimate, mean + 20, mean + 50); // and up to two looks of 20, with false calls
    }

    /// <summary>Plans go on from where the vehicle is, and the fewest keep the target by all vehicles.</summary>
    [Fact]
    public void Plans_begin_where_the_vehicle_is()
    {
        Scenario scenario = SeenLives.Scenario(SeenLives.Clean(0.3 * M, 0.25 * M)) with
        {
            RequiredKm = 0.8 * M,
            InspectionTerms = new InspectionTerms { RepairCost = 100, FailureCost = 1000, Target = 0.02 },
        };
        InspectResult result = Run(scenario, 8_192);
        Assert.All(result.Plans, p => Assert.InRange(p.FirstKm ?? 0.5 * M, 0.3 * M, 0.8 * M));
        PlannedLooks fewest = result.Plans.Single(p => p.Aim == PlanAim.Fewest);
        Assert.InRange(fewest.Greatest.Estimate, 0.015, 0.02);
        Assert.All(result.Plans, p => Assert.Equal(
            result.CostWithout!.Value.Estimate - p.Cost!.Value.Estimate, p.Saves!.Value.Estimate, 1e-6));

        // By the same vehicles the difference is surer than either.
        PlannedLooks cheapest = result.Plans.Single(p => p.Aim == PlanAim.Cheapest);
        Assert.True(cheapest.Saves!.Value.High - cheapest.Saves.Value.Low < result.CostWithout!.Value.High - result.CostWithout.Value.Low);
        Assert.True(cheapest.Cost!.Value.Estimate <= fewest.Cost!.Value.Estimate);
    }

    /// <summary>Of a new vehicle the figure without a look is risk's, and what the looks do is told as its ratio to it.</summary>
    [Fact]
    public void Without_evidence_the_figure_is_that_of_risk()
    {
        Scenario scenario = SeenLives.Scenario(Evidence.None) with
        {
            RequiredKm = 0.6 * M,
            Inspections = [SeenLives.Dye with { AtKm = [0.3 * M, 0.45 * M] }],
            InspectionTerms = new InspectionTerms { FailureCost = 1000 },
        };
        var model = new LifeModel(scenario);
        StudySettings settings = new(1_024, 5, "sobol");
        var run = new RunRecord(1, 1, 1, "", LifeModel.Version, false);
        double truth = LogLinear.Probability(0.6 * M);
        var told = new Interval(1.1 * truth, 1.05 * truth, 1.15 * truth); // one that is a tenth off shows where it is taken
        InspectResult own = Run(scenario, 1_024);
        InspectResult anchored = InspectAnalysis.Run(model, settings, new RunOptions { Threads = 2 }, km =>
            [.. km.Select(at => new RiskHeadline(at, at == 0.6 * M ? told : new Interval(0.1, 0.09, 0.11), RiskMethod.Conditional, run))]);
        Assert.Equal(told, anchored.WithoutPlan[^1].Failed);
        Assert.All(anchored.WithoutPlan.SkipLast(1), d => Assert.Equal(0.1, d.Failed.Estimate));
        Assert.Equal(anchored.WithoutPlan[0], anchored.WithPlan[0]);
        double times = told.Estimate / own.WithoutPlan[^1].Failed.Estimate;
        Assert.Equal(times * own.WithPlan[^1].Failed.Estimate, anchored.WithPlan[^1].Failed.Estimate, 1e-6);
        Assert.Equal(1000 * told.Estimate, anchored.CostWithout!.Value.Estimate, 1e-6);
        Assert.Equal(1000 * told.High, anchored.CostWithout.Value.High, 1e-3 * truth * 1000);
        double looks = own.Cost!.Value.Estimate - (1000 * own.WithPlan[^1].Failed.Estimate);
        Assert.Equal(looks + (1000 * anchored.WithPlan[^1].Failed.Estimate), anchored.Cost!.Value.Estimate, 1e-3);
        Assert.Equal(own.Looks, anchored.Looks);

        // Of a vehicle that was seen it is not asked.
        InspectResult seen = InspectAnalysis.Run(
            new LifeModel(scenario with { Evidence = SeenLives.Clean(0.1 * M) }), settings, new RunOptions { Threads = 2 },
            _ => throw new InvalidOperationException());
        Assert.NotNull(seen.Seen);
    }

    private static InspectResult Run(Scenario scenario, long evaluations)
    {
        var model = new LifeModel(scenario);
        return InspectAnalysis.Run(model, new StudySettings(evaluations, 5, "sobol"), new RunOptions { Threads = 2 });
    }
}
