using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Numerics;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>A fleet's warranty claims, and what would meet its targets.</summary>
internal static class FleetBlocks
{
    /// <summary>The warranty manager's decision.</summary>
    public static Headline Headline(FleetResult result) => new(
        "Expected warranty claims, and their 95 % band",
        $"{FleetText.Number(result.Claims.Expected.Estimate)}; {FleetText.Band(result.Claims)}",
        [
            $"{FleetText.OfFleet(result)}; {FleetText.Precision(result)}",
            FleetText.Terms(result),
            .. FleetText.ExpectedCost(result) is { } cost ? [cost] : Array.Empty<string>(),
            $"{FleetText.WriteDown(result)} {FleetText.Why(result)}",
        ]);

    /// <summary>
    /// What the warranty manager has to decide: the longest warranty that holds, where a target is stated, and the claims.
    /// </summary>
    public static IEnumerable<Block> Decision(FleetResult result) =>
        [.. LongestWarranty(result) is { } longest ? [longest] : Array.Empty<Block>(), Headline(result)];

    private static Headline? LongestWarranty(FleetResult result) =>
        result.Warranty?.Limits.FirstOrDefault(l => l.Basis != TargetBasis.Average) is not { } limit ? null : new(
            $"Longest warranty that keeps claims to {Figures.Probability(result.Warranty.Target)} of the fleet with a probability of 90 %",
            FleetLimitsText.Longest(result, limit), [FleetLimitsText.WarrantyWords(result, result.Warranty)]);

    public static IEnumerable<Block> Of(FleetResult result) =>
    [
        Headline(result),
        .. Warranty(result),
        .. Design(result),
        .. Pictures(result),
        FleetText.MonthTable(result).Captioned(FleetText.MonthsHeading),
        new Paragraph(FleetText.Reading),
    ];

    private static IEnumerable<Block> Pictures(FleetResult result)
    {
        ClaimMonth last = result.Months[^1];
        ClaimMonth busiest = result.Months.MaxBy(m => m.InMonth.Expected.Estimate)!;
        string band = $"The band holds the number with a probability of 95 %. {Charting.RunOf(result.Run)}";
        return
        [
            new Figure(
                new Picture(
                    "claims-so-far", $"A rising curve. To the end of month {last.Month}, the last, {FleetText.Number(last.SoFar.Expected.Estimate)} claims are expected.",
                    Chart(result, m => m.SoFar, last, $"end of month {last.Month}", "claims so far")),
                $"{FleetText.MonthsHeading}, together to the end of each month. {band}"),
            new Figure(
                new Picture(
                    "claims-in-month", $"A curve that is highest in month {busiest.Month}, with {FleetText.Number(busiest.InMonth.Expected.Estimate)} claims expected.",
                    Chart(result, m => m.InMonth, busiest, $"month {busiest.Month}, the most", "claims in the month")),
                $"{FleetText.MonthsHeading}, in each month alone; the month with most is marked. {band}"),
        ];
    }

    private static CurveChart Chart(FleetResult result, Func<ClaimMonth, Prediction> of, ClaimMonth marked, string label, string title)
    {
        CurvePoint Point(ClaimMonth m) => new(m.Month, new Interval(of(m).Expected.Estimate, of(m).Low, of(m).High));
        return new CurveChart(
            [.. result.Months.Select(Point)], [], Point(marked),
            [label, $"{FleetText.Number(of(marked).Expected.Estimate)} expected, {FleetText.Band(of(marked))}"],
            new ChartAxis("month since the first sale", Figures.Number), new ChartAxis(title, Figures.Number));
    }

    private static IEnumerable<Block> Warranty(FleetResult result) => result.Warranty is not { } warranty ? [] :
    [
        new Subheading(FleetLimitsText.WarrantyHeading(warranty)),
        new Paragraph(FleetLimitsText.WarrantyWords(result, warranty)),
        FleetLimitsText.WarrantyTable(result, warranty).Captioned(
            "Longest warranty under the target", "longest warranty", "limit", "95 % interval", "holds"),
    ];

    private static IEnumerable<Block> Design(FleetResult result) => result.Design is not { } design ? [] :
    [
        new Subheading(FleetLimitsText.DesignHeading(design)),
        new Paragraph(FleetLimitsText.AsItIs(result, design)),
        FleetLimitsText.DesignTable(design).Captioned("What meets it, each alone"),
        new ItemList([.. FleetLimitsText.DesignSentences(design)]),
    ];
}
