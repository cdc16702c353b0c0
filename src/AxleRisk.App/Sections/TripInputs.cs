using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>The trip as the scenario states it.</summary>
internal static class TripInputs
{
    public static IEnumerable<Block> Of(Scenario scenario) => scenario.Trip is not { } trip ? [] :
    [
        new Subheading("The trip"),
        new ItemList(
        [
            .. trip.Inputs.Where(i => i.Quantity.Section == TripQuantities.AlreadyDriven.Section).Select(Sentence),
            trip.TargetRisk is { } target
                ? $"Failure probability to be kept: {Figures.Probability(target)}" : "No failure probability to be kept is stated",
            .. CheckText.Correlations(scenario, trip.Correlations),
        ]),
        Legs(scenario, trip),
    ];

    private static Table Legs(Scenario scenario, Trip trip)
    {
        var table = new TextTable("leg", "<road", "<distance, km", "<of its own");
        for (int i = 0; i < trip.Legs.Length; i++)
        {
            TripLeg leg = trip.Legs[i];
            Input[] own = [.. trip.Inputs.Where(input => input.Leg == scenario.Legs.Length + i)];
            table.Add(
                leg.Name,
                leg.Like is { } like ? $"as {scenario.Legs[like].Name}" : UseInputs.Road(leg.RoadClass),
                string.Join("; ", own.Where(IsDistance).Select(input => DistributionText.WithKnowledge(input.Value))),
                string.Join("; ", own.Where(input => !IsDistance(input)).Select(Words)));
        }

        return table.Captioned("The legs of the trip, in the order they are driven; what a leg does not have of its own is that of the usual use");
    }

    private static bool IsDistance(Input input) => input.Quantity == TripQuantities.Distance;

    private static string Sentence(Input input) => Printable.Capital(Words(input));

    /// <summary>An input with its value; one that the file does not state says so, for it is an assumption.</summary>
    private static string Words(Input input) =>
        $"{input.Quantity.Label}{(input.Quantity.Unit.Length == 0 ? "" : ", " + input.Quantity.Unit)}: {DistributionText.WithKnowledge(input.Value)}"
        + (input.IsDefault ? $" (assumed: {input.DefaultSource})" : "");
}
