using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>What factors do together.</summary>
internal static class CombineSection
{
    public static Section Of(CombineResult result) => new(
        "Combined effects",
        [
            new Subheading("The worst combinations"),
            .. Worst(result),
            new Paragraph(CombineText.Searched(result.Searched)),
            new Subheading(CombineText.PairsHeading),
            .. CombineText.Told(result) is { Count: > 0 } told ? new Block[] { new ItemList([.. told.Select(CombineText.Sentence)]) } : [],
            new Paragraph(CombineText.PairsTold(result)),
            result.Interactions.IsEmpty
                ? new Paragraph($"{CombineText.InteractionsHeading}: {CombineText.NoInteractions}")
                : ReportTable.Of(CombineText.InteractionTable(result), CombineText.InteractionsHeading),
            new Paragraph(CombineText.Reading(result)),
            new Paragraph($"Run: {Frame.Run(result.Run, CombineText.Method(result))}."),
        ]);

    private static IEnumerable<Block> Worst(CombineResult result)
    {
        if (result.Combinations.IsEmpty)
        {
            return [new Paragraph(CombineText.NoneListed(result.Searched))];
        }

        return
        [
            new ItemList([.. result.Combinations.Select(CombineText.Sentence)], IsNumbered: true),
            new Figure(
                new Picture("combinations", $"The combinations listed above. The first: {CombineText.Sentence(result.Combinations[0])}", Chart(result)),
                "Failure probability of the vehicles in each combination, numbered as above. Dot: with its 95 % interval; stroke: what the members would give "
                    + $"if their effects multiplied; upright line: the average of all vehicles. {Charting.RunOf(result.Run)}"),
        ];
    }

    private static RowsChart Chart(CombineResult result) => new(
        [.. result.Combinations.Select(Row)], Charting.Percent($"failed by {Figures.Km(result.RequiredKm)} km"), result.Probability.Estimate);

    private static ChartRow Row(Combination c, int index) => new(
        $"{index + 1}. {string.Join(" + ", c.Members.Select(m => m.Column))}", RangeWords.Percent(c.Probability.Estimate),
        [
            .. c.Members.Length > 1 ? new[] { new ChartMark(MarkShape.Stroke, Math.Min(1, c.Multiplied.Estimate)) } : [],
            new ChartMark(MarkShape.Dot, c.Probability),
        ]);
}
