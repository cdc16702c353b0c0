using System.Collections.Immutable;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Outcomes;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>What factors do together.</summary>
internal static class CombineBlocks
{
    public static IEnumerable<Block> Of(CombineResult result) =>
    [
        HeadlineBlocks.Of(result.RequiredKm, result.Headline, result.Probability),
        new Subheading(CombineText.WorstHeading),
        .. Worst(
            result.Combinations, result.Searched, "combinations", $"failed by {Figures.Exact(result.RequiredKm)} km",
            result.Probability.Estimate, result.Run),
        .. Pairs(result),
        .. result.Interactions.IsEmpty
            ? new Block[] { new Subheading(CombineText.InteractionsHeading), new Paragraph(CombineText.NoInteractions) }
            : [CombineText.InteractionTable(result).Captioned(CombineText.InteractionsHeading)],
        new Paragraph(CombineText.Reading(result)),
    ];

    /// <summary>The pairs that depart from multiplication, and how many they are.</summary>
    public static IEnumerable<Block> Pairs(CombineResult result) =>
    [
        new Subheading(CombineText.PairsHeading),
        .. CombineText.Told(result) is { Count: > 0 } told ? new Block[] { new ItemList([.. told.Select(CombineText.Sentence)]) } : [],
        new Paragraph(CombineText.PairsTold(result)),
    ];

    /// <summary>The worst combinations, listed and drawn, and what was searched for them.</summary>
    /// <param name="combinations">The combinations, the worst first.</param>
    /// <param name="searched">What was searched.</param>
    /// <param name="picture">The name of the picture's file.</param>
    /// <param name="axis">What the axis measures.</param>
    /// <param name="average">The average of all vehicles.</param>
    /// <param name="run">The run behind them.</param>
    public static IEnumerable<Block> Worst(
        ImmutableArray<Combination> combinations, SearchRecord searched, string picture, string axis, double average, RunRecord run)
    {
        if (combinations.IsEmpty)
        {
            return [new Paragraph(CombineText.NoneListed(searched)), new Paragraph(CombineText.Searched(searched))];
        }

        var chart = new RowsChart([.. combinations.Select(Row)], Charting.Percent(axis), average);
        return
        [
            new ItemList([.. combinations.Select(CombineText.Sentence)], IsNumbered: true),
            new Figure(
                new Picture(picture, $"The combinations listed above. The first: {CombineText.Sentence(combinations[0])}", chart),
                "Failure probability of the vehicles in each combination, numbered as above. Dot: with its 95 % interval; stroke: what the members would give "
                    + $"if their effects multiplied; upright line: the average of all vehicles. {Charting.RunOf(run)}"),
            new Paragraph(CombineText.Searched(searched)),
        ];
    }

    private static ChartRow Row(Combination c, int index) => new(
        $"{index + 1}. {string.Join(" + ", c.Members.Select(m => m.Label))}", RangeWords.Percent(c.Probability.Estimate),
        [
            .. c.Members.Length > 1 ? new[] { new ChartMark(MarkShape.Stroke, Math.Min(1, c.Multiplied.Estimate)) } : [],
            new ChartMark(MarkShape.Dot, c.Probability),
        ]);
}
