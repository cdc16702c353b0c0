using System.Collections.Immutable;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Sweeps;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

/// <summary>An S-N curve that the scenario states itself.</summary>
public sealed class OwnCurveTests
{
    // DNV-RP-C203 (2016-2019), table 2-1, class E: design curve 12.010 and 15.350, mean 2 x 0.20 above.
    [Theory]
    [InlineData(12.410, 15.750, 0)]
    [InlineData(12.010, 15.350, 2)]
    public void That_of_a_catalogue_stated_by_hand_gives_the_same_lives(double above, double below, double deviations)
    {
        Scenario own = With(new([3, 5], [above, below], "a test") { StandardDeviation = 0.2, DeviationsBelowMean = deviations });
        Assert.Equal(
            BaseCaseAnalysis.MedianFactorsLifeKm(new LifeModel(FiveLegs.Scenario)),
            BaseCaseAnalysis.MedianFactorsLifeKm(new LifeModel(own)), 1e-6 * 486_590);
    }

    // Narrow-band: Rayleigh ranges at the rate of up-crossings, a cycle of S^m / a: C (2 sqrt 2 sigma)^m Gamma(1 + m/2) (Bendat 1964).
    // For m = 3.5, Gamma(2.75) = 1.6083594219855455.
    [Fact]
    public void One_slope_that_is_no_whole_number_has_the_closed_form_of_narrow_band_damage()
    {
        const double Slope = 3.5, Log10A = 13;
        BaseCaseResult result = BaseCaseAnalysis.Run(new LifeModel(
            With(new([Slope], [Log10A], "a test") { StandardDeviation = 0.2 }) with { Counting = CycleCounting.NarrowBand }));
        double expected = result.Axle!.Legs.Sum(l => l.Share * l.UpcrossingsPerSecond * 3600 / l.SpeedKmPerH
            * Math.Pow(2 * Math.Sqrt(2) * l.StressRmsMPa, Slope) * 1.6083594219855455 / Math.Pow(10, Log10A));
        Assert.Equal(expected, result.DamagePerKm, 2e-5 * expected);
    }

    // Through points, three slopes, a cut-off: the batch path against the scalar kernel, with strikes on a stop.
    [Theory]
    [InlineData(0.0)]
    [InlineData(30.0)]
    public void The_batch_path_agrees_with_the_scalar_kernel(double cutOff)
    {
        Scenario scenario = ThreeModes.With(
            With(new([3.2, 4.7, 7.5], [12.4, 15.1, 19.6], "a test") { StandardDeviation = 0.2, CutOffMPa = cutOff }),
            (Quantities.BumpClearance, new Value.Certain(45)));
        var model = new LifeModel(scenario);
        const int Rows = 40;
        Workspace workspace = model.CreateWorkspace(Rows);
        double[][] values = model.CreateColumns(Rows);
        model.Draw(SamplingPlan.FromName("plain", Rows), 1, "", 0, Rows, workspace, values);
        for (int row = 0; row < Rows; row++)
        {
            Workspace one = model.CreateWorkspace(1);
            model.Evaluate([.. values.Select(v => (double[])[v[row]])], 1, one);
            LegDetail[] details = model.Axle.DetailsOfFirstRow(one.Damage, strikes: true);
            Assert.Equal(details.Sum(d => d.DamagePerKmOfUse), one.DamagePerKm[0], 1e-4 * one.DamagePerKm[0]);
        }
    }

    [Fact]
    public void There_are_no_categories_to_go_through()
    {
        Scenario own = With(new([3], [12], "a test") { StandardDeviation = 0.2 });
        Assert.Contains("the scenario's own", Assert.Throws<StudyException>(() => SweptInput.Usual(own, Change.CategoryName)).Message);
        Fleet fleet = new()
        {
            Vehicles = 10,
            KmPerYear = new Value.Certain(20_000),
            WarrantyMonths = 12,
            WarrantyKm = 50_000,
            SaleShares = [1],
            TargetLife = new LifeTarget(0.1, 50_000),
        };
        FleetResult result = FleetAnalysis.Run(
            new LifeModel(own with { Fleet = fleet }), new StudySettings(2048, 1, "plain"), new RunOptions());
        Assert.All(result.Design!.Limits, l => Assert.Null(l.Category));
        Assert.NotEmpty(result.Design.Limits);
    }

    private static Scenario With(OwnCurve curve) => FiveLegs.Scenario with
    {
        Detail = new Detail(Detail.OwnCatalogue, [Detail.OwnCategory], ImmutableArray.Create(1.0)) { Own = curve },
    };
}
