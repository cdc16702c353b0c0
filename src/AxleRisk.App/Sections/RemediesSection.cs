using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>What each remedy would do.</summary>
internal static class RemediesSection
{
    /// <summary>Its heading.</summary>
    public const string Title = "Remedies";

    public static Section Of(Scenario scenario, RemediesResult result)
    {
        IReadOnlyList<(string Name, ComparedCase Case)> cases = RemediesText.Cases(result);
        double km = result.Comparison.DistanceKm;
        return new Section(
            Title,
            [
                .. RemediesText.Sentences(result).Select(s => new Paragraph(s)),
                new Paragraph("All cases of this section share samples of their own, so the probability as it is differs a little from the main figure."),
                new Subheading(RemediesText.Heading),
                new ItemList([.. scenario.Remedies.Select(RemediesText.Sentence)]),
                new Figure(
                    new Picture("remedies", string.Join(" ", RemediesText.Sentences(result)), Chart(km, cases, result.Base)),
                    $"{RiskText.Question(km)} with each remedy and each pair, the least first. Dot: with the 95 % interval of the probability by itself; "
                        + "upright line: as it is. Changes are surer than these intervals, for all cases share their samples: the table has them."
                        + $"{Charting.Shown(cases.Count)} {Charting.RunOf(result.Comparison.Run)}"),
                ReportTable.Of(ChangeTables.RiskTable(cases), ChangeTables.RiskHeading(km), Headers("failed")),
                ReportTable.Of(ChangeTables.LifeTable(cases), ChangeTables.LifeHeading + ChangeTables.TimesOfFirst,
                    Headers("B10 life, km")),
                new Paragraph($"Run: {Frame.Run(result.Comparison.Run, CompareText.Method(result.Comparison))}."),
            ]);
    }

    private static string[] Headers(string figure) => ["case", figure, "times (95 % interval)", "note"];

    private static RowsChart Chart(double km, IReadOnlyList<(string Name, ComparedCase Case)> cases, ComparedCase first) => new(
        [
            .. cases.Take(Charting.MostRows).Select(c => new ChartRow(
                c.Name, Figures.Probability(c.Case.Probability.Estimate), [new ChartMark(MarkShape.Dot, c.Case.Probability)])),
        ],
        Charting.Percent($"failed by {Figures.Exact(km)} km"), first.Probability.Estimate);
}
