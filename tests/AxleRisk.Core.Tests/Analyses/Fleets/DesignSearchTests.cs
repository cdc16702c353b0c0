using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Damage.Sections;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;
using static AxleRisk.Core.Tests.Analyses.Fleets.FleetCases;

namespace AxleRisk.Core.Tests.Analyses.Fleets;

public sealed class DesignSearchTests
{
    private static readonly Fleet Any = Fleet(1_000, Sure(20_000), 24, 100_000);

    [Fact]
    public void The_smallest_wall_is_that_whose_section_modulus_brings_the_life()
    {
        // Stresses so small that every range lies below the knee, where the DNV curves have slope 5 (DNV-RP-C203, table 2-1): life goes
        // with the fifth power of the tube's section modulus; walls below 25 mm need no thickness correction.
        Scenario scenario = With(ScaleOnly(), Quantities.StressFactor, Sure(0.05));
        double sigma = Math.Sqrt((MinerSigma * MinerSigma) + (ScatterSigma * ScatterSigma));
        double lnMedian = LnMedianLife(scenario);
        double km = Math.Exp(lnMedian + (StandardNormal.Quantile(0.1) * sigma) + (5 * Math.Log(0.9)));
        DesignLimit limit = Assert.Single(Run(scenario, Any with { TargetLife = new LifeTarget(0.1, km) }, 1024).Design!.Limits);
        double found = limit.WallMm!.Value.Estimate;
        Assert.True(found < 6);
        Assert.Equal(0.9, SectionModulus.Tube(95, found) / SectionModulus.Tube(95, 6), 1e-4);
        Assert.Null(limit.Tolerance);
    }

    [Fact]
    public void The_limits_meet_the_target_in_a_study_of_their_own()
    {
        var target = new LifeTarget(0.05, 50_000);
        DesignLimits design = Run(FiveLegs.Scenario, Any with { TargetLife = target }, 16_384).Design!;
        DesignLimit average = design.Limits[0];
        Assert.Equal(SearchOutcome.Found, average.WallMm!.Outcome);

        // The other study has its own error; the wall's interval says what ours is.
        double wall = average.WallMm.Value.Estimate;
        Interval other = Risk(With(FiveLegs.Scenario, Quantities.Wall, new Value.Uncertain(new Normal(wall, 0.25), Knowledge.Varies)),
            target.Km);
        Interval atLow = Risk(With(FiveLegs.Scenario, Quantities.Wall,
            new Value.Uncertain(new Normal(average.WallMm.Value.Low, 0.25), Knowledge.Varies)), target.Km);
        double ours = (atLow.Estimate - other.Estimate) / 2.13; // Student, 15 degrees of freedom
        double theirs = (other.High - other.Low) / (2 * 1.96);
        Assert.Equal(target.Fraction, other.Estimate, 4 * Math.Sqrt((ours * ours) + (theirs * theirs)));

        // The target with confidence asks for more than that on average.
        Assert.True(design.Limits[1].WallMm!.Value.Estimate > wall);
        Assert.True(average.Category!.Probability.Estimate <= target.Fraction
            && average.Category.NextProbability.Estimate > target.Fraction);
        Interval category = Risk(FiveLegs.Scenario with
        { Detail = FiveLegs.Scenario.Detail with { Categories = [average.Category.Category!] } }, target.Km);
        Assert.Equal(category.Estimate, average.Category.Probability.Estimate,
            2 * (average.Category.Probability.High - average.Category.Probability.Low));
    }

    [Fact]
    public void What_cannot_be_searched_is_left_out()
    {
        // A given section modulus: the wall decides nothing.
        Scenario given = FiveLegs.Scenario with
        {
            Shape = SectionShape.Given,
            Inputs = [.. FiveLegs.Scenario.Inputs.Where(i => i.Quantity != Quantities.OutsideDiameter),
                new Input("axle.section_modulus_mm3", Quantities.SectionModulus, null, Sure(36_000), false)],
        };
        DesignLimits design = Run(given, Any with { TargetLife = new LifeTarget(0.05, 50_000) }, 1024).Design!;
        Assert.Null(design.NominalWallMm);
        Assert.All(design.Limits, l => Assert.True(l.WallMm is null && l.Tolerance is null));
    }

    [Fact]
    public void A_target_that_nothing_or_everything_meets_is_said_to_be_so()
    {
        DesignLimit hopeless = Run(FiveLegs.Scenario, Any with { TargetLife = new LifeTarget(1e-6, 1e7) }, 1024).Design!.Limits[0];
        Assert.Equal((SearchOutcome.NoneMeets, SearchOutcome.NoneMeets, SearchOutcome.NoneMeets),
            (hopeless.WallMm!.Outcome, hopeless.Tolerance!.Outcome, hopeless.Category!.Outcome));
        Assert.Equal((null, "B1"), (hopeless.Category.Category, hopeless.Category.Next));
        DesignLimit easy = Run(FiveLegs.Scenario, Any with { TargetLife = new LifeTarget(0.5, 10) }, 1024).Design!.Limits[0];
        Assert.Equal((SearchOutcome.EveryMeets, SearchOutcome.EveryMeets, SearchOutcome.EveryMeets),
            (easy.WallMm!.Outcome, easy.Tolerance!.Outcome, easy.Category!.Outcome));
        Assert.Equal(("W3", null), (easy.Category.Category, easy.Category.Next));
    }

    private static double LnMedianLife(Scenario scenario)
    {
        var model = new LifeModel(scenario);
        Workspace workspace = model.CreateWorkspace(1);
        double[][] values = model.CreateColumns(1);
        foreach (Factor factor in model.Factors.Factors)
        {
            values[factor.FirstColumn][0] = factor.Median[0];
        }

        model.Evaluate(values, 1, workspace);
        return Math.Log(workspace.LifeKm[0]);
    }

    private static Interval Risk(Scenario scenario, double km) => RiskAnalysis.Run(
        new LifeModel(scenario with { RequiredKm = km }), new StudySettings(8_000, 7, "sobol"), new RiskQuestion(),
            new RunOptions()).Result.AtRequired.Probability;
}
