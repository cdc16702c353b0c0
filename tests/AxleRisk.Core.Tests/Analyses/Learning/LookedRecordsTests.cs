using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Learning;

/// <summary>Records of vehicles that were looked at for the crack.</summary>
public sealed class LookedRecordsTests
{
    private static readonly InspectionMethod Dye = new("dye", new DetectionCurve(1.5, 4), 0, 0, []);
    private static readonly Input Depth = new("crack.initial_depth_mm", Quantities.InitialDepth, null, new Value.Certain(0.2), false);

    /// <summary>
    /// Posterior mean and marginal likelihood by sums over even steps of theta and of the scatter, with the formulas written out: 40
    /// vehicles clean at 90,000 km and whole at 100,000, 3 found with 3 mm at 80,000 and taken out, 2 clean at 60,000 that failed
    /// by 110,000.
    /// </summary>
    [Fact]
    public void Learning_from_looks_is_that_of_quadrature()
    {
        CrackLook Look(double km, bool isFound) => new(Dye, km, isFound, isFound ? 3 : null, isFound ? 0.5 : 0);
        FieldRecord[] records =
        [
            LearnCase.Whole(100_000, 40, 2) with { Look = Look(90_000, false) },
            LearnCase.Whole(80_000, 3, 3) with { Look = Look(80_000, true) },
            new FieldRecord(60_000, 110_000, 2, "", [], 4) { Look = Look(60_000, false) },
            LearnCase.Whole(40_000, 10, 5),
        ];
        LifeModel plain = LearnCase.Model(new FieldData("returns.csv", [.. records]), Depth);
        var model = new LifeModel(plain.Scenario with { Crack = new Crack() });
        LearnResult result = LearnAnalysis.Run(
            model, new LearnQuestion([50_000, 100_000]), new StudySettings(1 << 16, 1, "sobol"), new RunOptions { Threads = 2 });
        PosteriorSample sample = result.Posterior!;
        double mean = sample.Mean(row => -LearnCase.ThetaSd * sample.Z[0][row]);
        (double all, double first) = (0, 0);
        double wall = model.Scenario.Find(Quantities.Wall)!.Value.Nominal;
        for (int i = 0; i < 400; i++)
        {
            double t = -6 + (12 * (i + 0.5) / 400), theta = LearnCase.ThetaSd * t, log = 0;
            foreach (FieldRecord r in records)
            {
                log += r.Vehicles * Math.Log(Likelihood(r, theta, wall));
            }

            double weight = 12.0 / 400 * StandardNormal.Density(t) * Math.Exp(log);
            (all, first) = (all + weight, first + (weight * theta));
        }

        Assert.Equal(Math.Log(all), result.LogMarginalLikelihood.Estimate, 2e-3);
        Assert.Equal(first / all, mean, 2e-3);
        Assert.InRange(Math.Abs(mean), 0.05, 2); // the records do teach
    }

    /// <summary>Of vehicles that differ, the likelihood computed at a few damages is the mean of those of each.</summary>
    [Fact]
    public void Likelihoods_at_a_few_damages_stand_for_all()
    {
        Scenario scenario = LogLinear.Scenario with { Crack = new Crack(), Inputs = [.. LogLinear.Scenario.Inputs, Depth] };
        var model = new LifeModel(scenario);
        const int rows = 256;
        Workspace space = model.CreateWorkspace(rows);
        double[][] values = model.CreateColumns(rows);
        model.Draw(SamplingPlan.FromName("sobol", rows), 7, "test", 0, rows, space, values);
        model.Evaluate(values, rows, space);
        CrackLook look = new(Dye, 0.3 * LogLinear.MedianKm, false, null, 0);
        double km = 0.4 * LogLinear.MedianKm;
        FieldRecord[] records =
        [
            new(km, double.PositiveInfinity, 1, "", [], 2) { Look = look }, new(km, 2 * km, 1, "", [], 3) { Look = look },
            new(km, km, 1, "", [], 4) { Look = look },
        ];
        var looked = new LookedRecords(model, [.. records]);
        looked.Begin(model.Scale, model.Chances);
        looked.Add(space, values, rows, 1.0 / rows);
        LooksLikelihood each = new(model, [look]);
        double[] sums = new double[3];
        for (int row = 0; row < rows; row++)
        {
            each.Take(space, values, row);
            double used = space.DamagePerKm[row] * km;
            sums[0] += each.Chance!.Survival(used) / rows;
            sums[1] += each.Chance.Fails(used, 2 * used) / rows;
            sums[2] += each.Chance.Fails(used * 0.999, used * 1.001) / (0.002 * km) / rows;
        }

        for (int r = 0; r < 3; r++)
        {
            Assert.Equal(Math.Log(sums[r]), looked.LogOf(records[r]), 2e-3);
        }
    }

    private static double Likelihood(FieldRecord record, double theta, double wall)
    {
        const int steps = 2000;
        double sum = 0;
        for (int i = 0; i < steps; i++)
        {
            double v = -7 + (14 * (i + 0.5) / steps), life = LearnCase.MedianKm * Math.Exp(theta + (LearnCase.Sigma * v));
            if (life <= record.FromKm || life > record.ToKm)
            {
                continue;
            }

            double seen = 1;
            if (record.Look is { } look)
            {
                double mm = new CrackDepth(0.2, wall, 3).At(look.Km / life), error = (3 - mm) / 0.5;
                seen = look.IsFound ? Dye.Detection.Of(mm) * Math.Exp(-0.5 * error * error) : 1 - Dye.Detection.Of(mm);
            }

            sum += 14.0 / steps * StandardNormal.Density(v) * seen;
        }

        return sum;
    }
}
