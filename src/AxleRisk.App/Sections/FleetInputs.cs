using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>The fleet and its warranty as the scenario states them.</summary>
internal static class FleetInputs
{
    public static IEnumerable<Block> Of(Scenario scenario)
    {
        if (scenario.Fleet is not { } fleet)
        {
            yield break;
        }

        var table = new TextTable("input", "<as stated", "<unit");
        void Row(string key, string label, string value, string unit = "") => table.AddNoted("fleet." + key, label, value, unit);
        Row("vehicles", "vehicles sold", Figures.Count(fleet.Vehicles));
        Row("distance_km_per_year", "distance of one vehicle in a year", DistributionText.WithKnowledge(fleet.KmPerYear), "km");
        Row("warranty_months", "warranty, age limit", Figures.Count(fleet.WarrantyMonths), "months");
        Row("warranty_km", "warranty, distance limit", Figures.Exact(fleet.WarrantyKm), "km");
        Row("sales_months", "sold over", Sales(fleet), "months");
        if (fleet.CostPerClaim is { } cost)
        {
            Row("cost_per_claim", "cost of one claim", DistributionText.WithKnowledge(cost), Printable.Line(scenario.Currency ?? ""));
        }

        if (fleet.TargetClaimRate is { } rate)
        {
            Row("target_claim_rate", "share of vehicles that may make a claim", Figures.Probability(rate));
        }

        if (fleet.TargetLife is { } life)
        {
            Row("target_fraction", "share that may have failed by a distance", Figures.Probability(life.Fraction));
            Row("target_km", "that distance", Figures.Exact(life.Km), "km");
        }

        yield return new Subheading("The fleet and its warranty");
        yield return table.Captioned("What is stated of the fleet and its warranty");
    }

    private static string Sales(Fleet fleet) => fleet.SaleShares.Length
        + (fleet.SaleShares.All(s => s == fleet.SaleShares[0]) ? fleet.SaleShares.Length > 1 ? ", as many in each" : ""
            : ": " + string.Join(", ", fleet.SaleShares.Select(s => $"{Figures.Number(100 * s)} %")));
}
