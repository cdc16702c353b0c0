using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>The decision as the scenario states it.</summary>
internal static class DecisionInputs
{
    public static IEnumerable<Block> Of(Scenario scenario) => [.. Decision(scenario), .. Measurements(scenario)];

    private static IEnumerable<Block> Measurements(Scenario scenario)
    {
        var table = new TextTable("measurement", "<of", "accuracy (sd)", "readings", "cost");
        foreach (PlannedMeasurement m in scenario.Measurements)
        {
            table.AddNoted(
                m.Factor, Printable.Line(m.Name), Printable.Line(scenario.LabelOf(m.Factor)), Figures.Exact(m.StandardDeviation),
                Figures.Count(m.Number), Figures.Cost(m.Cost, scenario.Currency));
        }

        return table.Count == 0 ? []
            : [new Subheading("Measurements that could be made"), table.Captioned("What could be measured, how well and at what cost")];
    }

    private static IEnumerable<Block> Decision(Scenario scenario)
    {
        if (scenario.Decision is not { } decision)
        {
            yield break;
        }

        var table = new TextTable("input", "<as stated", "<unit");
        if (decision.CostOfFailure(scenario) is { } cost)
        {
            table.AddNoted(
                decision.FailureCost is null ? "fleet.cost_per_claim" : "decision.failure_cost", "cost of one failure",
                DistributionText.WithKnowledge(cost), Printable.Line(scenario.Currency ?? ""));
        }

        table.AddNoted("decision.over", "failures that count", decision.UnderWarranty ? "under the warranty"
            : decision.Km is { } km ? $"to {Figures.Exact(km)} km" : "to the required distance");
        if (decision.VehiclesIn(scenario) is > 1 and var vehicles)
        {
            table.AddNoted("decision.vehicles", "vehicles", Figures.Count(vehicles));
        }

        foreach (Package package in decision.Packages)
        {
            table.AddNoted(
                "decision.packages", Printable.Line(package.Name), string.Join(" + ", package.Remedies.Select(r => Printable.Line(r.Name))),
                package.Cost is { } price ? Figures.Cost(price, scenario.Currency) : "");
        }

        yield return new Subheading("The decision");
        yield return table.Captioned("What is stated of the decision");
    }
}
