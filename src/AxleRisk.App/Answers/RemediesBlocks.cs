using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>What each remedy would do.</summary>
internal static class RemediesBlocks
{
    public static IEnumerable<Block> Of(Scenario scenario, RemediesResult result)
    {
        IReadOnlyList<(string Name, ComparedCase Case)> cases = RemediesText.Cases(result);
        double km = result.Comparison.DistanceKm;
        return
        [
            .. RemediesText.Sentences(result).Select(s => new Paragraph(s)),
            .. result.Rows.Where(r => r.Remedies.Length == 1 && r.Case.Change is { IsRiskDistinct: true, Difference.Estimate: > 0 })
                .Select(r => new Warning(
                    $"The remedy \"{Printable.Line(r.Name)}\" makes it worse: {Figures.Probability(r.Case.Probability.Estimate)} instead of {Figures.Probability(result.Base.Probability.Estimate)}.")),
            new Figure(
                new Picture("remedies", string.Join(" ", RemediesText.Sentences(result)), Chart(km, cases, result.Base)),
                $"{RiskText.Question(km)} with each remedy and each pair, the least first. Dot: with the 95 % interval of the probability by itself; "
                    + "upright line: as it is. Changes are surer than these intervals, for all cases share their samples: the table has them."
                    + $"{Charting.Shown(cases.Count)} {Charting.RunOf(result.Comparison.Run)}"),
            .. ChangeBlocks.Of(km, cases),
            new Paragraph("All cases share samples of their own, so the probability as it is differs a little from that of risk."),
            new Subheading(RemediesText.Heading),
            new ItemList([.. scenario.Remedies.Select(r => RemediesText.Sentence(scenario, r))]),
        ];
    }

    private static RowsChart Chart(double km, IReadOnlyList<(string Name, ComparedCase Case)> cases, ComparedCase first) => new(
        [
            .. cases.Take(Charting.MostRows).Select(c => new ChartRow(
                c.Name, Figures.Probability(c.Case.Probability.Estimate), [new ChartMark(MarkShape.Dot, c.Case.Probability)])),
        ],
        Charting.Percent($"failed by {Figures.Exact(km)} km"), first.Probability.Estimate);
}
