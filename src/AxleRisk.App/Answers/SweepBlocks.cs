using System.Collections.Immutable;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Sweeps;
using AxleRisk.Core.Numerics;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>One or two inputs moved over a range.</summary>
internal static class SweepBlocks
{
    public static IEnumerable<Block> Of(SweepResult result) =>
    [
        new Headline(
            RiskText.Question(result.DistanceKm) + ", as stated", RiskText.Answer(result.Stated.Probability),
            [
                .. result.Inputs.Select((_, i) => SweepText.Sentence(result, i)),
                .. SweepText.Together(result) is { } together ? new[] { together } : [],
            ]),
        .. result.Inputs.SelectMany((axis, i) => Moved(result, axis, i)),
        .. result.Inputs.Length < 2 ? [] : new Block[]
        {
            SweepText.Failures(result).Captioned(
                $"Failure over {SweepText.Named(result)}",
                [.. result.Inputs.Select(SweepText.Axis), "failed", "95 % interval", "together (95 % interval)"]),
            SweepText.Lives(result).Captioned(
                $"Life of the base case over {SweepText.Named(result)}, relative to that as stated",
                [.. result.Inputs.Select(SweepText.Axis), "relative life", "life together"]),
            new Paragraph(SweepText.TogetherReading),
        },
        new Paragraph(SweepText.Reading),
    ];

    private static IEnumerable<Block> Moved(SweepResult result, SweepAxis axis, int input) =>
    [
        new Subheading($"{Printable.Capital(axis.Label)} moved, all else as stated"),
        new Figure(Drawn(result, axis, input), $"{RiskText.Question(result.DistanceKm)} over {axis.Label}. {BandWords} {Charting.RunOf(result.Run)}")
        {
            InLines = true,
        },
        SweepText.Table(result, input).Captioned(
            $"Relative life and damage, and failure, over {axis.Label}", SweepText.Axis(axis), "relative life", "relative damage", "failed", "95 % interval",
            "times as stated (95 % interval)"),
    ];

    private const string BandWords = "The band is the 95 % interval of each point by itself; the upright line is the scenario as stated.";

    private static Picture Drawn(SweepResult result, SweepAxis axis, int input)
    {
        ImmutableArray<CurvePoint> curve =
            [.. SweepText.Alone(result, input).Select(p => new CurvePoint(p.Place[input], p.Case.Probability))];
        Interval stated = result.Stated.Probability;
        return new Picture(
            $"sweep-{result.Inputs[input].Name.Replace('.', '-').Replace('_', '-')}", SweepText.Sentence(result, input),
            new CurveChart(
                curve, [], new CurvePoint(axis.Stated, stated), ["as stated", $"{Figures.Probability(stated)} fail"],
                new ChartAxis(SweepText.Axis(axis), double.IsNaN(axis.Stated) ? x => Category(axis, curve, x) : Figures.Number),
                Charting.Percent("failed"))
            {
                FromZero = false,
            });
    }

    private static string Category(SweepAxis axis, ImmutableArray<CurvePoint> curve, double x) =>
        curve.ToList().FindIndex(p => p.X == x) is >= 0 and var i ? axis.Values[i] : "";
}
