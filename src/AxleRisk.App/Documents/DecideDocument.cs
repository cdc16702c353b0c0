using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Analyses.Decisions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Documents;

/// <summary>A decision as JSON and as rows.</summary>
internal static class DecideDocument
{
    public static JsonForm<DecideResult> Form { get; } = new JsonForm<DecideResult>()
        .Text("currency", "what costs are stated in", r => r.Currency).Optional()
        .Whole("vehicles", "the number of vehicles that costs are of", r => r.Vehicles)
        .NumberOrNull("distance_km", "the distance to which failures count, km; null where the warranty decides", r => r.Km)
        .NumberOrNull("warranty_months", "the age limit of the warranty; null where a distance decides", r => r.Fleet?.WarrantyMonths)
        .NumberOrNull("warranty_km", "the distance limit of the warranty, km; null where a distance decides", r => r.Fleet?.WarrantyKm)
        .Object("own_sample", "what this analysis' own sample says of the scenario as it is",
            HeadlineDocument.Own, r => (r.Headline, r.Own))
        .Number("mean_failure_cost", "what one failure costs on average", r => r.MeanFailureCost)
        .Text("best", "the option with the least expected net cost", r => r.Options[r.Best].Name)
        .Text("next", "the best of the other options", r => r.Next.Name)
        .Interval("lead", "how much more that is expected to cost than the best, paired", r => r.Lead)
        .Interval("perfect_information", "what knowing all that is unknown would save on average", r => r.PerfectInformation)
        .List("options", "the options, the scenario as it is first", new JsonForm<DecidedOption>()
            .Text("name", "its name", o => o.Name)
            .Number("price", "what it costs a vehicle", o => o.Price)
            .Number("cost", "what it costs for all vehicles", o => o.Cost)
            .Interval("failed", "failure probability of a vehicle", o => o.Failed)
            .Number("failure_cost", "what its failures are expected to cost", o => o.FailureCost.Estimate)
            .Interval("net_cost", "both together", o => o.NetCost)
            .Maybe("difference", "its net cost less that of the scenario as it is, paired; null for that itself", CommonForms.Interval,
                o => o.Difference)
            .Number("probability_best", "probability, given what is unknown, that no other option is expected to cost less",
                o => o.ProbabilityBest.Estimate)
            .Number("probability_best_low", "lower end of its 95 % interval", o => o.ProbabilityBest.Low)
            .Number("probability_best_high", "upper end of its 95 % interval", o => o.ProbabilityBest.High)
            .Number("break_even_price", "the price a vehicle at which its expected net cost is that of the best of the others",
                o => o.BreakEvenPrice.Estimate)
            .Number("break_even_low", "lower end of its 95 % interval", o => o.BreakEvenPrice.Low)
            .Number("break_even_high", "upper end of its 95 % interval", o => o.BreakEvenPrice.High)
            .Text("break_even_against", "the best of the others", o => o.Against), r => r.Options)
        .Texts("unknown", "the factors that are unknown", r => r.Unknown.Select((Factor f) => f.Name))
        .Whole("outer_draws", "outer draws of what is unknown", r => r.Draws)
        .Whole("inner_draws", "vehicles drawn for each of them", r => r.VehiclesOfDraw);

    public static string[] Header { get; } =
    [
        "option", "price", "cost", "failed", "failed_low", "failed_high", "failure_cost", "net_cost", "net_cost_low", "net_cost_high",
        "difference", "difference_low", "difference_high", "probability_best", "probability_best_low", "probability_best_high",
        "break_even_price", "break_even_low", "break_even_high", "break_even_against",
    ];

    public static IEnumerable<string[]> Rows(DecideResult result) => result.Options.Select(o => (string[])
    [
        o.Name, Cells.Of(o.Price), Cells.Of(o.Cost), .. Three(o.Failed), Cells.Of(o.FailureCost.Estimate), .. Three(o.NetCost),
        .. o.Difference is { } d ? Three(d) : ["", "", ""], .. Three(o.ProbabilityBest), .. Three(o.BreakEvenPrice), o.Against,
    ]);

    private static string[] Three(Interval i) => [Cells.Of(i.Estimate), Cells.Of(i.Low), Cells.Of(i.High)];
}
