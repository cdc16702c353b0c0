using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Decisions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>The options of a decision with what they are expected to cost.</summary>
internal static class DecideBlocks
{
    /// <summary>The choice, its price and its doubt.</summary>
    public static Headline Headline(DecideResult result) => new(
        "The least expected net cost", DecideText.Choice(result), [.. DecideText.Sentences(result)]);

    public static IEnumerable<Block> Of(Scenario scenario, DecideResult result) =>
    [
        Headline(result),
        new Warning(DecideText.People),
        DecideText.Table(result).Captioned(
            DecideText.Heading, "option", "price", "a vehicle fails", "cost of failures", "net cost, +- of 95 %", "best"),
        new Figure(
            new Picture("net-costs", Alternative(result), new RowsChart([.. Rows(result)], new ChartAxis(Axis(scenario), DecideText.Money))),
            $"Expected net cost with its 95 % interval. {Charting.RunOf(result.Run)}"),
        DecideText.AgainstTable(result).Captioned(DecideText.AgainstHeading),
        new Paragraph(DecideText.Reading),
    ];

    private static string Axis(Scenario scenario) => "expected net cost"
        + (scenario.Currency is { } currency ? $", {Printable.Line(currency)}" : "");

    private static string Alternative(DecideResult result) =>
        string.Join("; ", result.Options.Select(o => $"{Printable.Line(o.Name)} {DecideText.Money(o.NetCost.Estimate)}")) + ".";

    private static IEnumerable<ChartRow> Rows(DecideResult result) =>
        result.Options.OrderBy(o => o.NetCost.Estimate).Select(o => new ChartRow(
        Printable.Line(o.Name), DecideText.Money(o.NetCost.Estimate), [new ChartMark(MarkShape.Dot, o.NetCost)]));
}
