using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Numerics;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>The base case, and one factor at a time.</summary>
internal static class BaseBlocks
{
    public static IEnumerable<Block> Of(BaseCaseResult result) =>
    [
        new Headline(BaseText.Label, BaseText.Answer(result), [.. BaseText.Facts(result)]),
        .. result.Axle!.Sections.IsEmpty ? []
            : new Block[] { BaseText.SectionTable(result).Captioned("The checked sections in the base case") },
        BaseText.LegTable(result).Captioned("The legs in the base case"),
        .. result.Axle!.Events.IsEmpty ? [] : new Block[] { BaseText.EventTable(result).Captioned("Events in the base case") },
        .. result.Depths.IsEmpty ? [] : new Block[] { DepthText.Nominal(result.Depths).Captioned(DepthText.NominalHeading) },
        .. OneAtATime(result),
    ];

    private static IEnumerable<Block> OneAtATime(BaseCaseResult result)
    {
        if (result.Factors.IsEmpty)
        {
            return [new Paragraph(CheckText.NothingUncertain)];
        }

        ChartRow[] rows = [.. result.Factors.Take(Charting.MostRows).Select(Row)];
        var chart = new RowsChart([.. rows], new ChartAxis("life over the life of the base case", Figures.Number, IsLog: true),
            Reference: 1);
        OneAtATime first = result.Factors[0];
        return
        [
            new Figure(
                new Picture(
                    "one-at-a-time",
                    $"One factor at a time, the strongest first: {first.Factor.Label} moves life from {Figures.Ratio(first.LifeAtLow)} to {Figures.Ratio(first.LifeAtHigh)} times that of the base case.",
                    chart),
                $"{BaseText.OneAtATimeHeading}. Ring: the factor at its 5 % point (of a category, the first); dot: at its 95 % point (the last); "
                    + $"upright line: the base case. The scale is one of ratios.{Charting.Shown(result.Factors.Length)} "
                    + $"{result.Evaluations} evaluations, no sampling."),
            BaseText.OneAtATimeTable(result).Captioned(BaseText.OneAtATimeHeading, "factor", "5 % point", "life there", "95 % point", "life there", "life at +10 %"),
        ];
    }

    private static ChartRow Row(OneAtATime f) => new(
        f.Factor.Label, $"{Figures.Ratio(f.LifeAtLow)} to {Figures.Ratio(f.LifeAtHigh)}",
        [
            new ChartMark(MarkShape.Link, new Interval(f.LifeAtLow, f.LifeAtLow, f.LifeAtHigh)),
            new ChartMark(MarkShape.Ring, f.LifeAtLow), new ChartMark(MarkShape.Dot, f.LifeAtHigh),
        ]);
}
