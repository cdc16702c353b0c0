using AxleRisk.Core.Damage.Fatigue;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

public class SnCatalogueTests
{
    public static TheoryData<string> Catalogues => [.. SnCatalogue.Catalogues];

    [Fact]
    public void The_catalogues_have_the_names_of_scenario_files() =>
        Assert.Equal(["DNV-RP-C203", "EN 1993-1-9", "IIW"], SnCatalogue.Catalogues);

    [Theory]
    [MemberData(nameof(Catalogues))]
    public void Categories_come_best_first_and_each_is_found_with_a_source(string catalogue)
    {
        SnCurve[] curves = [.. SnCatalogue.Categories(catalogue).Select(c => SnCatalogue.Find(catalogue, c)!)];
        Assert.Equal(14, curves.Length);
        Assert.All(curves, c => Assert.Contains(catalogue == "IIW" ? "IIW" : catalogue, c.Source));
        foreach (double range in (double[])[30, 80, 150])
        {
            Assert.Equal(curves.OrderByDescending(c => c.CyclesToFailure(range)), curves);
        }
    }

    [Theory]
    [MemberData(nameof(Catalogues))]
    public void Every_curve_is_continuous_at_its_knee(string catalogue)
    {
        foreach (string category in SnCatalogue.Categories(catalogue))
        {
            SnCurve c = SnCatalogue.Find(catalogue, category)!;
            double below = Math.BitDecrement(c.KneesMPa[0] * (1 - 1e-12));
            Near.Relative(c.CyclesToFailure(c.KneesMPa[0] * (1 + 1e-12)), c.CyclesToFailure(below), 1e-9);
        }
    }

    [Theory]
    [InlineData("DNV-RP-C203", "F2")]
    [InlineData("DNV-RP-C203", "e")]
    [InlineData("EN 1993-1-9", "FAT 71")]
    [InlineData("EN 1993-1-9", "")]
    [InlineData("BS 7608", "E")]
    public void What_is_not_in_the_catalogues_is_null(string catalogue, string category) =>
        Assert.Null(SnCatalogue.Find(catalogue, category));

    [Fact]
    public void An_unknown_catalogue_has_no_categories() => Assert.Empty(SnCatalogue.Categories("BS 7608"));

    [Fact]
    public void An_iiw_class_may_be_named_by_its_number() =>
        Assert.Equal("FAT 71", SnCatalogue.Find("IIW", "71")!.Category);

    // From memory: FAT 0.2^(1/3) at the knee equals the DNV limits in air, and the branch of slope 5 DNV's intercept within 0.001.
    [Theory]
    [InlineData("FAT 90", 52.63, 15.606)]
    [InlineData("FAT 71", 41.52, 15.091)]
    [InlineData("FAT 36", 21.05, 13.617)]
    public void An_iiw_class_meets_the_equal_dnv_class(string category, double knee, double log10A2)
    {
        SnCurve c = SnCatalogue.Find("IIW", category)!;
        Assert.Equal(knee, c.KneesMPa[0], 0.01);
        Assert.Equal(log10A2, c.Lines[1].Log10A, 0.001);
        Assert.Equal((3, 5), (c.Lines[0].Slope, c.Lines[1].Slope));
    }

    // From memory: slope 5, 115.96 MPa at 1e7, and 2 m - 1 beyond.
    [Fact]
    public void Fat_160_has_slopes_of_its_own()
    {
        SnCurve c = SnCatalogue.Find("IIW", "FAT 160")!;
        Assert.Equal((5, 9), (c.Lines[0].Slope, c.Lines[1].Slope));
        Assert.Equal(115.96, c.KneesMPa[0], 0.01);
        Near.Relative(2e6, c.CyclesToFailure(160), 1e-12);
    }

    // Standard deviation of log10 N 0.20 (DNV-RP-C203, 2.4.1). Its design curves and those of the IIW lie two of them under the mean,
    // those of EN 1993-1-9 at a survival of 95 %, a normal score of 1.645 (from memory).
    [Theory]
    [InlineData("DNV-RP-C203", 0.40)]
    [InlineData("IIW", 0.40)]
    [InlineData("EN 1993-1-9", 0.329)]
    public void The_mean_lies_so_far_over_the_design_curve(string catalogue, double log10) =>
        Assert.All(SnCatalogue.Categories(catalogue), c => Assert.Equal(log10, SnCatalogue.Find(catalogue, c)!.DesignToMeanLog10, 5e-4));

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void A_range_that_is_none_is_refused(double range) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SnCatalogue.Find("IIW", "71")!.CyclesToFailure(range));

    [Fact]
    public void No_stress_lives_for_ever_and_infinite_stress_not_at_all()
    {
        SnCurve c = SnCatalogue.Find("DNV-RP-C203", "E")!;
        Assert.Equal(double.PositiveInfinity, c.CyclesToFailure(0));
        Assert.Equal(0, c.CyclesToFailure(double.PositiveInfinity));
    }
}
