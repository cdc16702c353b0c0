using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Learning;

/// <summary>Vehicles on which something was measured, and the likelihood of records, by hand.</summary>
public class VehicleSetTests
{
    private const string Ratio = "fatigue.damage_ratio", Stress = "fatigue.stress_factor";

    private static readonly Input Miner = new(
        "fatigue.miner_sum", Quantities.MinerSum, null, new Value.Uncertain(new Lognormal(1, 0.3), Knowledge.Unknown), false);

    // A normal value with a normal error of measurement has the mean weighted by precision (any textbook, from memory): of equal spreads
    // the middle, and a spread less by the root of 2; of a spread three times as wide a tenth of the way.
    [Theory]
    [InlineData(0.1, 1.1, 1.05, 0.070711)]
    [InlineData(0.3, 1.5, 1.05, 0.094868)]
    [InlineData(0.1, 0.8, 0.9, 0.070711)]
    public void Of_measured_vehicles_a_normal_value_is_the_conjugate_normal(double error, double measured, double mean, double deviation)
    {
        const int Rows = 8192;
        LifeModel model = Model([Whole(new FieldMeasurement(Ratio, measured, error))], Varying(new Normal(1, 0.1)));
        VehicleSet set = VehicleSet.Of(model, new Unknowns(model), Rows, 1)[1];
        double[] values = set.Values[Column(Ratio)];
        Assert.Equal(Rows, set.Rows);
        double found = values.Average();
        Assert.Equal(mean, found, 5e-4);
        Assert.Equal(deviation, Math.Sqrt(values.Average(v => (v - found) * (v - found))), 1e-3);
    }

    // Vehicles of a record without a measurement are drawn in every column that varies, the first as well.
    [Fact]
    public void Of_others_everything_that_varies_does()
    {
        LifeModel model = Model([Whole()], Varying(new Normal(1, 0.1)));
        VehicleSet set = Assert.Single(VehicleSet.Of(model, new Unknowns(model), 4096, 1));
        var unknowns = new Unknowns(model);
        Assert.Contains(true, model.Factors.ColumnNames.Select((_, column) => !unknowns.IsUnknown[column]));
        for (int column = 0; column < model.Factors.ColumnNames.Length; column++)
        {
            double[] values = set.Values[column];
            Assert.Equal(!unknowns.IsUnknown[column], values.Distinct().Count() > 4_000);
        }

        double[] ratio = set.Values[Column(Ratio)];
        Assert.Equal(0.1, Math.Sqrt(ratio.Average(v => (v - 1) * (v - 1))), 1e-3);
        Assert.False(unknowns.IsUnknown[0]); // the very first varies, so that the loop is seen to begin with it
    }

    [Theory]
    [InlineData(1.3)]
    [InlineData(1)]
    [InlineData(0.75)]
    public void A_known_value_is_that_of_every_vehicle(double known)
    {
        VehicleSet set = Sets(Varying(new Normal(1, 0.1)), Whole(new FieldMeasurement(Ratio, known, 0)))[1];
        Assert.All(set.Values[Column(Ratio)], v => Assert.Equal(known, v, 1e-9));
    }

    [Fact]
    public void A_known_state_is_that_of_every_vehicle_and_others_vary()
    {
        Input choice = new(Stress, Quantities.StressFactor, null,
            new Value.Uncertain(new NumberChoice([1.0, 1.1, 1.2], [0.2, 0.5, 0.3]), Knowledge.Varies), false);
        FieldRecord[] records = [Whole(new FieldMeasurement(Stress, 1.2, 0)), Whole(new FieldMeasurement(Stress, 1.1, 0)), Whole()];
        LifeModel model = Model(records, choice);
        ImmutableArray<VehicleSet> sets = VehicleSet.Of(model, new Unknowns(model), 256, 1);
        int column = model.Factors.ColumnNames.IndexOf(Stress);
        Assert.Equal([1, 1, 1], sets.Select(s => s.Records.Length));
        Assert.Equal([1.0, 1.1, 1.2], sets[0].Values[column].Distinct().Order());
        Assert.Equal(0.5, sets[0].Values[column].Count(v => v == 1.1) / 256.0, 0.01);
        Assert.Equal([1.2], sets[1].Values[column].Distinct());
        Assert.Equal([1.1], sets[2].Values[column].Distinct());
    }

    // Many measured vehicles share about four times the rows of the others, a power of 2 each and 8 at least.
    [Theory]
    [InlineData(3, 256)]
    [InlineData(10, 64)]
    [InlineData(200, 8)]
    public void Rows_of_measured_vehicles_are_fewer_where_they_are_many(int vehicles, int rows)
    {
        FieldRecord[] records = [.. Enumerable.Range(0, vehicles).Select(i => Whole(new FieldMeasurement(Ratio, 1 + (0.001 * i), 0.1)))];
        ImmutableArray<VehicleSet> sets = Sets(Varying(new Normal(1, 0.1)), records);
        Assert.Equal(vehicles + 1, sets.Length);
        Assert.All(sets[1..], s => Assert.Equal(rows, s.Rows));
    }

    // What all vehicles share was measured on three: each says so, beside what its life says.
    [Fact]
    public void A_measurement_of_what_is_shared_is_weighed_once_a_vehicle()
    {
        const double Km = 120_000;
        double error = 0.1 * LearnCase.Ratio;
        var record = new FieldRecord(Km, double.PositiveInfinity, 3, "", [new FieldMeasurement(Ratio, 1.3 * LearnCase.Ratio, error)], 2);
        LifeModel model = LearnCase.Model(new FieldData("f.csv", [record]));
        Assert.False(VehicleSet.VariesFor(model, new Unknowns(model)));
        foreach (double z in new[] { -0.4, 0, 0.9 })
        {
            double ratio = LearnCase.Ratio * Math.Exp(LearnCase.ThetaSd * z);
            double off = ((1.3 * LearnCase.Ratio) - ratio) / error;
            double score = (Math.Log(Km / LearnCase.MedianKm) + (LearnCase.ThetaSd * z)) / LearnCase.Sigma;
            Assert.Equal(3 * (Math.Log(StandardNormal.Upper(score)) - (0.5 * off * off)), LogLikelihood(model, z), 1e-5);
        }

        LifeModel exact = LearnCase.Model(new FieldData("f.csv", [record with { Measured = [new FieldMeasurement(Ratio, 7, 0)] }]));
        Assert.Equal(double.NegativeInfinity, LogLikelihood(exact, 0.2));
    }

    // Failed at, between, and not yet: density, difference, survival; also where nearly all have failed before.
    [Theory]
    [InlineData(0)]
    [InlineData(9)]
    [InlineData(-3)]
    public void The_likelihood_of_records_is_that_of_the_lognormal(double z)
    {
        FieldRecord[] records =
        [
            LearnCase.At(90_000, 2), LearnCase.Whole(70_000, 4, 3), new FieldRecord(80_000, 130_000, 2, "", [], 4),
            new FieldRecord(0, 60_000, 1, "", [], 5),
        ];
        double Score(double km) => (Math.Log(km / LearnCase.MedianKm) + (LearnCase.ThetaSd * z)) / LearnCase.Sigma;
        double expected = Math.Log(StandardNormal.Density(Score(90_000)) / (LearnCase.Sigma * 90_000))
            + (4 * Math.Log(StandardNormal.Upper(Score(70_000))))
            + (2 * Math.Log(Score(80_000) > 0 ? StandardNormal.Upper(Score(80_000)) - StandardNormal.Upper(Score(130_000))
                : StandardNormal.Cumulative(Score(130_000)) - StandardNormal.Cumulative(Score(80_000))))
            + Math.Log(StandardNormal.Cumulative(Score(60_000)));
        Assert.Equal(expected, LogLikelihood(LearnCase.Model(new FieldData("f.csv", [.. records])), z), 1e-4);
    }

    private static double LogLikelihood(LifeModel model, double z)
    {
        var log = new double[1];
        new LearnModel(model, new Unknowns(model), 1, 1, [50_000]).CreateWorker().Evaluate(0, [[z]], 0, 1, log);
        return log[0];
    }

    private static Input Varying(Distribution distribution) =>
        new(Ratio, Quantities.DamageRatio, null, new Value.Uncertain(distribution, Knowledge.Varies), false);

    private static FieldRecord Whole(params ImmutableArray<FieldMeasurement> measured) =>
        new(50_000, double.PositiveInfinity, 1, "", measured, 2);

    private static LifeModel Model(FieldRecord[] records, Input input) =>
        LearnCase.Model(new FieldData("f.csv", [.. records]), input, Miner);

    private static ImmutableArray<VehicleSet> Sets(Input input, params FieldRecord[] records)
    {
        LifeModel model = Model(records, input);
        return VehicleSet.Of(model, new Unknowns(model), 256, 1);
    }

    private static int Column(string name) => Model([], Varying(new Normal(1, 0.1))).Factors.ColumnNames.IndexOf(name);
}
