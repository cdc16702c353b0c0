using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>Which factors matter.</summary>
internal static class RankSection
{
    /// <summary>Its heading.</summary>
    public const string Title = "Which factors decide it";

    public static Section Of(RankResult result) => new(
        Title,
        [
            new Figure(
                new Picture("shares", Alternative(result), Chart(result)),
                $"Share of failure by {Figures.Exact(result.RequiredKm)} km, factor by factor, with 95 % intervals.{Charting.Shown(result.Factors.Length)} {Charting.RunOf(result.Run)}"),
            ReportTable.Of(
                RankText.ShareTable(result), RankText.SharesHeading(result), "factor", "place", "share of failure", "interval",
                "share of the spread of life"),
            new Paragraph(RankText.SharesReading),
            ReportTable.Of(RankText.PinTable(result), RankText.PinsHeading),
            .. RankText.CorrelatedReading(result).Select(t => new Paragraph(t)),
            ReportTable.Of(RankText.LegTable(result), $"{RankText.LegsHeading}, %", "leg", "of damage", "interval"),
            new Paragraph($"Run: {Frame.Run(result.Run, RankText.Method(result))}."),
        ]);

    private static string Alternative(RankResult result) =>
        "Bars, the longest first: "
        + string.Join(", ", result.Factors.Take(5).Select(f => $"{f.Factor.Name} {RankText.ShareWithRange(f.FailureShare)}")) + ".";

    private static RowsChart Chart(RankResult result) => new(
        [
            .. result.Factors.Take(Charting.MostRows).Select(f => new ChartRow(
                f.Factor.Name, RankText.ShareWithRange(f.FailureShare), [new ChartMark(MarkShape.Bar, f.FailureShare)])),
        ],
        Charting.Percent("share of failure"));
}
