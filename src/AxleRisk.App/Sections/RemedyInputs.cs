using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>The remedies, those of a trip among them, as the scenario states them.</summary>
internal static class RemedyInputs
{
    public static IEnumerable<Block> Of(Scenario scenario)
    {
        var table = new TextTable("remedy", "<what it changes", "cost");
        Scenario whole = Trip.Whole(scenario);
        foreach ((Remedy remedy, string where) in scenario.Remedies.Select(r => (r, ""))
            .Concat(scenario.Trip?.Remedies.Select(r => (r, "of the trip alone")) ?? []))
        {
            table.AddNoted(
                where, Printable.Line(remedy.Name), RemediesText.Changes(whole, remedy),
                remedy.Cost is { } cost ? Figures.Cost(cost, scenario.Currency) : "");
        }

        return table.Count == 0 ? [] : [new Subheading("The remedies"), table.Captioned("What each remedy changes, and what it costs")];
    }
}
