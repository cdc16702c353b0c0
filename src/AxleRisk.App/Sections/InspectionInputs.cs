using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>The crack, the ways of looking for it and what a plan is judged by, as the scenario states them.</summary>
internal static class InspectionInputs
{
    public static IEnumerable<Block> Of(Scenario scenario)
    {
        if (scenario.Crack is not { } crack)
        {
            yield break;
        }

        yield return new Subheading("The crack and the looks for it");
        if (crack.Own is { } own)
        {
            var points = new TextTable("fraction of life used", "depth mm");
            foreach ((double fraction, double mm) in own.Fractions.Zip(own.DepthsMm))
            {
                points.Add(Figures.Exact(fraction), Figures.Exact(mm));
            }

            yield return points.Captioned("The depth of the crack, as stated");
        }

        if (!scenario.Inspections.IsEmpty)
        {
            yield return InspectText.Methods(scenario.Inspections, scenario.Currency).Captioned("The ways of looking");
            yield return Terms(scenario).Captioned("What a plan is judged by");
        }
    }

    private static TextTable Terms(Scenario scenario)
    {
        InspectionTerms terms = scenario.InspectionTerms;
        var table = new TextTable("input", "<as stated");
        table.AddNoted("inspection_plan.target", "target between looks", terms.Target is { } p ? Figures.Probability(p) : "none");
        table.AddNoted("inspection_plan.repair_cost", "cost of a repair", Figures.Cost(terms.RepairCost, scenario.Currency));
        table.AddNoted("inspection_plan.false_call_cost", "cost of a false call", Figures.Cost(terms.FalseCallCost, scenario.Currency));
        table.AddNoted("inspection_plan.failure_cost", "cost of a failure",
            terms.FailureCost is { } cost ? Figures.Cost(cost, scenario.Currency) : "as of the decision, if stated");
        table.AddNoted("inspection_plan.repaired_life", "life after a repair, over that of a new part", terms.RepairedLife == 1 ? "the same" : Figures.Exact(terms.RepairedLife));
        return table;
    }
}
