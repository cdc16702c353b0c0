using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Learning;

/// <summary>What gauges on a test vehicle say.</summary>
public class GaugeModelTests
{
    private static readonly LifeModel Model = new(FiveLegs.Scenario);

    // A run's damage per km is that of its leg at full share; its stress that of the leg.
    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    [InlineData(4)]
    public void A_run_is_its_leg_alone(int leg)
    {
        double[][] medians = Medians();
        Workspace workspace = Model.CreateWorkspace(1);
        Model.Evaluate(medians, 1, workspace);
        double share = Model.Scenario.Legs[leg].Share;
        Assert.Equal(Math.Log(workspace.DamageByLeg[leg][0] / share), Ln(Model, new GaugeRun(leg, [], 1, null, 0.1, 2)), 1e-6);
        double rms = Model.Axle.DetailsOfFirstRow(workspace.Damage, strikes: false)[leg].Plain.RmsMPa;
        Assert.Equal(Math.Log(rms), Ln(Model, new GaugeRun(leg, [], null, 1, 0.1, 2)), 1e-6);
    }

    // A stated speed is the speed driven, a stated input its value.
    [Fact]
    public void What_a_run_states_is_put_in_place_of_the_scenarios()
    {
        var run = new GaugeRun(2, [new("legs.leg3.speed_km_per_h", 70, 0), new("axle.wall_mm", 7, 0)], 1, null, 0.1, 2);
        var there = new LifeModel(FiveLegs.Scenario with
        {
            Inputs = [.. FiveLegs.Scenario.Inputs.Select(i =>
                i.Name == "legs.leg3.speed_km_per_h" ? i with { Value = new Value.Certain(70) }
                : i.Quantity == Quantities.SpeedFactor ? i with { Value = new Value.Certain(1) }
                : i.Quantity == Quantities.Wall ? i with { Value = new Value.Certain(7) } : i)],
        });
        double stated = Ln(Model, run);
        Assert.Equal(Ln(there, new GaugeRun(2, [], 1, null, 0.1, 2)), stated, 1e-6);
        Assert.True(Math.Abs(stated - Ln(Model, new GaugeRun(2, [], 1, null, 0.1, 2))) > 0.01);
    }

    // The normal density of ln by hand: 2 standard deviations off, ln 0.5 and half of ln 2 pi.
    [Fact]
    public void The_likelihood_is_the_normal_density_of_the_logarithm()
    {
        double expected = -2 - Math.Log(0.5) - (0.5 * Math.Log(2 * Math.PI));
        Assert.Equal(expected, new GaugeModel(Model, new GaugeRun(0, [], Math.E, null, 0.5, 2)).Log(0), 1e-12);
        Assert.Equal(expected, new GaugeModel(Model, new GaugeRun(0, [], null, 1, 0.5, 2)).Log(1), 1e-12);
    }

    // ln ratio is normal, and so is its measurement: precisions add (any textbook, from memory).
    [Fact]
    public void A_damage_measured_teaches_the_conjugate_normal()
    {
        const double Error = 0.3, Off = 0.6, Sd = LearnCase.ThetaSd;
        double measured = Math.Exp(Off) / LearnCase.MedianKm;
        LifeModel bare = LearnCase.Model(FieldData.None);
        var model = new LifeModel(bare.Scenario with
        {
            Gauges = new GaugeData("g.csv", [new GaugeRun(0, [], measured, null, Error, 2), new GaugeRun(0, [], measured, null, Error, 3)]),
        });
        PosteriorSample sample = LearnAnalysis.Run(
            model, new LearnQuestion([50_000]), new StudySettings(LearnAnalysis.LeastEvaluations, 1, "sobol"), new RunOptions()).Posterior!;
        double precision = (1 / (Sd * Sd)) + (2 / (Error * Error));
        double mean = sample.Mean(row => Sd * sample.Z[0][row]);
        Assert.Equal(2 * Off / (Error * Error) / precision, mean, 1e-3);
        Assert.Equal(1 / precision, sample.Mean(row => Math.Pow((Sd * sample.Z[0][row]) - mean, 2)), 1e-3);
    }

    private static double Ln(LifeModel model, GaugeRun run)
    {
        var gauge = new GaugeModel(model, run);
        var ln = new double[1];
        double[][] medians = model.CreateColumns(1);
        foreach (Factor factor in model.Factors.Factors)
        {
            medians[factor.FirstColumn][0] = factor.Median[0];
        }

        gauge.FillLn(medians, 1, gauge.CreateWorkspace(1), ln);
        return ln[0];
    }

    private static double[][] Medians()
    {
        double[][] medians = Model.CreateColumns(1);
        foreach (Factor factor in Model.Factors.Factors)
        {
            medians[factor.FirstColumn][0] = factor.Median[0];
        }

        return medians;
    }
}
