using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>A fleet in a scenario file. Lines are counted behind <see cref="Good.Text"/>, which ends with line 30.</summary>
public class FleetReadingTests
{
    private const string Whole = "[fleet]\nvehicles = 200\ndistance_km_per_year = 3e4\nwarranty_months = 36\nwarranty_km = 1e5\n";

    [Fact]
    public void Everything_is_read()
    {
        Fleet fleet = Good.Parse(Good.Text + """
            [fleet]
            vehicles = 1_500
            distance_km_per_year = { distribution = "lognormal", median = 25000, cov = 0.4 }
            warranty_months = 24
            warranty_km = 80000
            sales_shares = [0.25, 0.5, 0.25]
            cost_per_claim = { distribution = "gamma", mean = 2000, cov = 0.5 }
            target_claim_rate = 0.02
            target_fraction = 0.05
            target_km = 120000
            """).Scenario.Fleet!;
        Assert.Equal((1_500L, 24, 80_000.0), (fleet.Vehicles, fleet.WarrantyMonths, fleet.WarrantyKm));
        Assert.Equal([0.25, 0.5, 0.25], fleet.SaleShares);
        Assert.Equal(25_000, fleet.KmPerYear.Nominal, 1e-6);
        Assert.IsType<Gamma>(Assert.IsType<Value.Uncertain>(fleet.CostPerClaim).Distribution);
        Assert.Equal(0.02, fleet.TargetClaimRate);
        Assert.Equal(new LifeTarget(0.05, 120_000), fleet.TargetLife);
    }

    [Fact]
    public void What_may_be_left_out_may_be_left_out()
    {
        Fleet fleet = Good.Parse(Good.Text + Whole).Scenario.Fleet!;
        Assert.Equal([1.0], fleet.SaleShares);
        Assert.True(fleet.CostPerClaim is null && fleet.TargetClaimRate is null && fleet.TargetLife is null);
        Assert.Null(Good.Parse(Good.Text).Scenario.Fleet);
        Assert.Equal(Enumerable.Repeat(0.25, 4), Good.Parse(Good.Text + Whole + "sales_months = 4\n").Scenario.Fleet!.SaleShares);
    }

    [Theory]
    [InlineData("vehicles = 200", "vehicles = 2.5", "a.toml(32,12): fleet.vehicles must be a whole number from 1 to 10000000, not 2.5")]
    [InlineData("warranty_months = 36", "warranty_months = 601",
        "a.toml(34,19): fleet.warranty_months must be a whole number from 1 to 600, not 601")]
    [InlineData("warranty_km = 1e5", "warranty_km = 0", "a.toml(35,15): fleet.warranty_km must be a number above 0, not 0")]
    [InlineData("vehicles = 200\n", "", "a.toml(31,1): fleet.vehicles is missing")]
    [InlineData("= 3e4", "= { distribution = 'lognormal', median = 3e4, cov = 0.3, knowledge = 'unknown' }",
        "a.toml(33,91): fleet.distance_km_per_year can only vary: one owner drives more than another")]
    [InlineData("= 3e4", "= { distribution = 'normal', mean = 3e4, sd = 3e4 }",
        "a.toml(33,24): fleet.distance_km_per_year must be a number above 0, but normal(mean 30000, sd 30000) is not with probability 0.159; truncate it with min")]
    [InlineData("vehicles", "sales_months = 3\nsales_shares = [1]\nvehicles",
        "a.toml(33,1): only one of fleet.sales_months and fleet.sales_shares can be stated")]
    [InlineData("vehicles", "sales_shares = [0.5, 0.6]\nvehicles", "a.toml(32,16): fleet.sales_shares must add up to 1, not to 1.1")]
    [InlineData("vehicles", "sales_shares = [1.5, -0.5]\nvehicles",
        "a.toml(32,16): fleet.sales_shares must be up to 600 numbers from 0 to 1, one a month, such as [0.2, 0.5, 0.3]")]
    [InlineData("vehicles", "target_claim_rate = 1\nvehicles",
        "a.toml(32,21): fleet.target_claim_rate must be a number above 0 and below 1, not 1")]
    [InlineData("vehicles", "target_km = 1e5\nvehicles",
        "a.toml(32,1): fleet.target_fraction and fleet.target_km belong together: the share that may have failed by a distance")]
    [InlineData("vehicles", "cost_per_claim = -5\nvehicles", "a.toml(32,18): fleet.cost_per_claim must be a number not below 0, not -5")]
    [InlineData("vehicles", "target_claimrate = 0.1\nvehicles",
        "a.toml(32,1): unknown key \"target_claimrate\" in fleet; did you mean \"target_claim_rate\"?")]
    public void What_is_wrong_is_named_where_it_stands(string old, string replacement, string expected) =>
        Assert.Equal([expected], Good.ErrorsOf(Good.Text + Whole.Replace(old, replacement)));

    [Fact]
    public void A_fleet_is_one_table() =>
        Assert.Equal(["a.toml(1,9): fleet must be one table under [fleet]"], Good.ErrorsOf("fleet = 3\n" + Good.Text));
}
