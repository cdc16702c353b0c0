using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>Which factors matter.</summary>
internal static class RankBlocks
{
    public static IEnumerable<Block> Of(RankResult result) =>
    [
        HeadlineBlocks.Of(result.RequiredKm, result.Headline, result.Probability),
        new Figure(
            new Picture("shares", Alternative(result), Chart(result)),
            $"Share of failure by {Figures.Exact(result.RequiredKm)} km, factor by factor, with 95 % intervals.{Charting.Shown(result.Factors.Length)} {Charting.RunOf(result.Run)}"),
        RankText.ShareTable(result).Captioned(
            RankText.SharesHeading(result), "factor", "place", "share of failure", "interval", "share of the spread of life"),
        .. Kinds(result),
        .. Indices(result, f => f.Failure, "Failure before that distance, factor by factor (Sobol' indices of the event)"),
        .. Indices(result, f => f.Life, "Spread of life, factor by factor (Sobol' indices of ln life)"),
        RankText.PinTable(result).Captioned(RankText.PinsHeading),
        new Paragraph(string.Join(' ', [RankText.SharesReading(result), RankText.IndicesReading, .. RankText.CorrelatedReading(result)])),
    ];

    /// <summary>What kind of failures they are: their modes, and the legs that do the damage.</summary>
    public static IEnumerable<Block> Kinds(RankResult result) =>
    [
        .. ModeBlocks.Of(result),
        RankText.LegTable(result).Captioned(RankText.LegsHeading + ", %", "leg", "of damage", "interval"),
    ];

    private static IEnumerable<Block> Indices(RankResult result, Func<RankedFactor, SobolPair> of, string heading)
    {
        (TextTable table, int rest) = RankText.IndexTable(result, of);
        yield return table.Captioned(heading);
        if (rest > 0)
        {
            yield return new Paragraph($"And {rest} more, each below {RankText.LeastShown}.");
        }
    }

    private static string Alternative(RankResult result) =>
        "Bars, the longest first: "
        + string.Join(", ", result.Factors.Take(5).Select(f => $"{f.Factor.Label} {RankText.ShareWithRange(f.FailureShare)}")) + ".";

    private static RowsChart Chart(RankResult result) => new(
        [
            .. result.Factors.Take(Charting.MostRows).Select(f => new ChartRow(
                f.Factor.Label, RankText.ShareWithRange(f.FailureShare), [new ChartMark(MarkShape.Bar, f.FailureShare)])),
        ],
        Charting.Percent("share of failure"));
}
