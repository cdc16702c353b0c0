using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Learning;

/// <summary>
/// Life curves given what is unknown, against their closed forms: life is 200,000 km x D / exp(theta) x exp(v), where D, theta and v may
/// be unknown or vary.
/// </summary>
public class CurveFillerTests
{
    private const double SdOfMiner = 0.29;

    private static readonly double[] Km = [40_000, 150_000, 210_000, 600_000];

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1.2, 0.4)]
    [InlineData(-2, 1)]
    public void An_unknown_miner_sum_is_held_and_the_scatter_averaged(double miner, double ratio)
    {
        LifeModel model = LearnCase.Model(FieldData.None, Miner(Knowledge.Unknown));
        Like(model, 1, Z(model, miner, ratio), (SdOfMiner * miner) - (LearnCase.ThetaSd * ratio), LearnCase.Sigma);
    }

    [Fact]
    public void A_miner_sum_and_a_scatter_that_vary_are_averaged_together()
    {
        LifeModel model = LearnCase.Model(FieldData.None, Miner(Knowledge.Varies));
        Like(model, 1, [[0.7]], -0.7 * LearnCase.ThetaSd, Math.Sqrt((SdOfMiner * SdOfMiner) + (LearnCase.Sigma * LearnCase.Sigma)));
    }

    // With the scatter certain too nothing is left to chance: lives are spread by a tenth.
    [Fact]
    public void Lives_without_chance_are_spread_by_a_tenth()
    {
        LifeModel model = LearnCase.Model(FieldData.None, Miner(Knowledge.Unknown), Scatter(new Value.Certain(0)));
        Assert.True(new CurveFiller(model, new Unknowns(model), 1).IsCounted);
        Like(model, 1, Z(model, -0.5, 0.3), (-0.5 * SdOfMiner) - (0.3 * LearnCase.ThetaSd), 0.1);
    }

    // The damage ratio varies: the curve is the mean of as many lognormal ones as there are vehicles.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(8)]
    [InlineData(2048)]
    public void The_curve_of_several_vehicles_is_the_mean_of_theirs(int rows)
    {
        LifeModel model = LearnCase.Model(FieldData.None, Miner(Knowledge.Unknown), Ratio());
        var learn = new LearnModel(model, new Unknowns(model), rows, 3, Km);
        double[] ratios = learn.Sets[0].Values[model.Factors.ColumnNames.IndexOf("fatigue.damage_ratio")];
        Assert.Equal(rows, ratios.Length);
        Assert.Equal(rows, ratios.Distinct().Count());
        Check(learn, [[0.6]], km => ratios.Select(r =>
            (Math.Log(km / LearnCase.MedianKm * (r / LearnCase.Ratio)) - (0.6 * SdOfMiner)) / LearnCase.Sigma), LearnCase.Sigma, 2e-6);
    }

    // Fatigue, a larger load and the bearing together: the density is the slope of the failure probability.
    [Fact]
    public void With_several_modes_the_density_is_the_slope_and_the_survival_the_product()
    {
        Scenario scenario = CertainModes.Scenario;
        scenario = scenario with
        {
            Inputs = [.. scenario.Inputs, new Input("fatigue.damage_ratio", Quantities.DamageRatio, null,
                new Value.Uncertain(new Lognormal(1, 0.3), Knowledge.Unknown), false)],
        };
        (double damage, double yields, double lives) = CertainModes.Rates(CertainModes.Scenario);
        double middle = 0.5 / damage;
        const double h = 1e-3;
        double[] nodes = [middle * (1 - h), middle, middle * (1 + h)];
        var model = new LifeModel(scenario);
        var learn = new LearnModel(model, new Unknowns(model), 1, 1, nodes);
        LearnWorker worker = learn.CreateWorker();
        double times = Math.Exp(0.3 * 0.8);
        worker.Evaluate(0, [[0.8]], 0, 1, new double[1], _ =>
        {
            LifeCurve curve = worker.Curves[0];
            double whole = CertainModes.Survival(times * damage * middle, yields * middle, lives * middle);
            Assert.InRange(whole, 0.2, 0.99);
            Assert.Equal(whole, curve.Whole[1], 1e-6);
            Assert.Equal(1 - whole, curve.Failed[1], 1e-6);
            double slope = (curve.Failed[2] - curve.Failed[0]) / (2 * h * middle);
            Assert.Equal(slope, curve.Density[1], 1e-4 * slope);
        });
    }

    private static Input Miner(Knowledge knowledge) =>
        new("fatigue.miner_sum", Quantities.MinerSum, null, new Value.Uncertain(new Lognormal(1, SdOfMiner), knowledge), false);

    private static Input Scatter(Value value) =>
        LogLinear.Scenario.Inputs.Single(i => i.Quantity == Quantities.LifeScatter) with { Value = value };

    private static Input Ratio() => new("fatigue.damage_ratio", Quantities.DamageRatio, null,
        new Value.Uncertain(new Lognormal(LearnCase.Ratio, LearnCase.ThetaSd), Knowledge.Varies), false);

    // The coordinates in the order of the columns.
    private static double[][] Z(LifeModel model, double miner, double ratio) =>
        [.. new Unknowns(model).Columns.Select(c => new[] { model.Factors.ColumnNames[c] == "fatigue.miner_sum" ? miner : ratio })];

    private static void Like(LifeModel model, int rows, double[][] z, double lnOfMedian, double sigma) =>
        Check(new LearnModel(model, new Unknowns(model), rows, 1, Km), z,
            km => [(Math.Log(km / LearnCase.MedianKm) - lnOfMedian) / sigma], sigma, 2e-6);

    private static void Check(LearnModel learn, double[][] z, Func<double, IEnumerable<double>> scores, double sigma, double relative)
    {
        LearnWorker worker = learn.CreateWorker();
        worker.Evaluate(0, z, 0, 1, new double[1], _ =>
        {
            foreach (double km in Km)
            {
                (double failed, double whole, double density) = worker.Curves[0].At(km);
                Near(scores(km).Average(StandardNormal.Cumulative), failed, relative);
                Near(scores(km).Average(StandardNormal.Upper), whole, relative);
                Near(scores(km).Average(StandardNormal.Density) / (sigma * km), density, relative);
            }
        });
    }

    // What is left of the damage's own accuracy, some 1e-7, grows in the tails.
    private static void Near(double expected, double actual, double relative) =>
        Assert.True(Math.Abs(actual - expected) <= 10 * relative * Math.Abs(expected), $"{actual:R} is not {expected:R}");
}
