using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Numerics;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>Whether the axle lasts the trip, and what would let it.</summary>
internal static class TripBlocks
{
    /// <summary>The planner's decision.</summary>
    public static Headline Headline(TripResult result) => new(
        result.Seen is null ? "Failed on the trip, of the vehicles that set out" : "Failed on the trip, of the vehicles like this one that set out",
        RiskText.Answer(result.Probability), [.. Decision(result)]);

    public static IEnumerable<Block> Of(TripResult result) =>
    [
        Headline(result),
        .. Worse(result),
        new Paragraph(TripText.Distances(result)),
        .. double.IsNaN(result.Probability.Estimate) ? [] : Pictures(result),
        .. TripText.Speaker(result) is { } leg ? RareEventBlocks.Of(leg.Answer, TripText.DesignHeading(leg)) : [],
        TripText.LegTable(result).Captioned(TripText.LegsHeading),
        TripText.EndTable(result).Captioned(TripText.EndsHeading),
        .. Limits(result),
        .. result.Looks.IsEmpty ? []
            : new Block[] { TripLookText.Table(result).Captioned(TripLookText.Heading), new Paragraph(TripLookText.Reading) },
        .. CardBlocks.Of(result),
        .. Remedies(result),
        .. Combinations(result),
        new Paragraph(TripText.Reading(result)),
    ];

    /// <summary>Warnings against remedies that make it worse, as the printed figures show.</summary>
    public static IEnumerable<Warning> Worse(TripResult result) => result.Remedies
        .Where(r => r.IsDistinct && r.Ratio.Low > 1 && Figures.Probability(r.Probability) != Figures.Probability(result.Probability))
        .Select(r => new Warning(
            $"The remedy \"{Printable.Line(r.Remedy.Name)}\" makes the trip riskier: {Figures.Probability(r.Probability)} instead of {Figures.Probability(result.Probability)}."));

    private static IEnumerable<string> Decision(TripResult result) =>
        new[]
        {
            TripWords.Verdict(result), TripWords.Given(result), TripWords.Looking(result), TripWords.Advice(result),
            CardText.Summary(result),
        }.Where(s => s.Length > 0);

    private static IEnumerable<Block> Pictures(TripResult result)
    {
        TripLegRisk last = result.Legs[^1];
        CurvePoint[] ends = [.. result.Legs.Select(l => new CurvePoint(l.EndKm, l.Cumulative))];
        string told = string.Join("; ", result.Legs.Select(l => $"{l.Name} {Figures.Probability(l.Conditional)}")) + ".";
        string toldEnds = string.Join("; ",
            result.Legs.Select(l => $"{Figures.Probability(l.Cumulative)} at {Figures.Exact(l.EndKm)} km, the end of {l.Name}")) + ".";
        return
        [
            new Figure(
                new Picture("trip-legs", told, new RowsChart([.. result.Legs.Select(Row)], Charting.Percent("failed on the leg"))),
                $"{TripText.LegsHeading}, in the order they are driven. Dot: with its 95 % interval. {Charting.RunOf(result.Run)}"),
            new Figure(
                new Picture(
                    "trip-so-far", toldEnds,
                    new CurveChart(
                        [new CurvePoint(0, new Interval(0, 0, 0)), .. ends], [.. ends[..^1]], ends[^1],
                        [$"end of {last.Name}: {Figures.Exact(last.EndKm)} km", $"{Figures.Probability(last.Cumulative)} fail by then"],
                        Charting.Km(), Charting.Percent("failed"))),
                $"{TripText.EndsHeading}. Rings and the last dot: the ends of the legs; the line between them only joins them. "
                    + $"The band is the 95 % interval of sampling. {Charting.RunOf(result.Run)}"),
        ];
    }

    private static ChartRow Row(TripLegRisk leg) => new(
        leg.Name, Figures.Probability(leg.Conditional), [new ChartMark(MarkShape.Dot, leg.Conditional)]);

    private static IEnumerable<Block> Limits(TripResult result) => result.Target is not { } target || result.Limits.IsEmpty ? [] :
        [new Subheading(TripText.LimitsHeading(target)), new ItemList([.. TripText.LimitSentences(result)])];

    private static IEnumerable<Block> Remedies(TripResult result)
    {
        if (result.Remedies.IsEmpty)
        {
            return [];
        }

        ChartRow[] rows =
        [
            .. result.Remedies.Take(Charting.MostRows).Select(r => new ChartRow(
                Printable.Line(r.Remedy.Name), Figures.Probability(r.Probability), [new ChartMark(MarkShape.Dot, r.Probability)])),
        ];
        string told = string.Join("; ", rows.Select(r => $"{r.Label} {r.Value}")) + ".";
        return
        [
            new Subheading(TripText.RemediesHeading),
            new Figure(
                new Picture("trip-remedies", told,
                    new RowsChart([.. rows], Charting.Percent("failed on the trip"), result.Probability.Estimate)),
                "Failure probability of the trip with each remedy, the least first. Dot: with the 95 % interval of the probability by itself; upright line: as planned. "
                    + $"The ratios of the table are surer, for all cases share their samples.{Charting.Shown(result.Remedies.Length)} {Charting.RunOf(result.Run)}"),
            TripText.RemedyTable(result).Captioned(TripText.RemediesHeading, "case", "fail", "times (95 % interval)", "note"),
        ];
    }

    private static IEnumerable<Block> Combinations(TripResult result) => result.Searched is not { } searched ? [] :
    [
        new Subheading(TripText.CombinationsHeading),
        .. CombineBlocks.Worst(result.Combinations, searched, "trip-combinations", "failed on the trip", result.Probability.Estimate,
            result.Run),
    ];
}
