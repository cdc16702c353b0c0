using System.Collections.Immutable;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>What the data teach.</summary>
internal static class LearnBlocks
{
    private const int MostPoints = 60;

    public static IEnumerable<Block> Of(Scenario scenario, LearnResult result)
    {
        TextTable factors = LearnText.Factors(scenario, result), choices = LearnText.Choices(scenario, result);
        return
        [
            .. Headlines(scenario, result),
            .. result.Rivals.IsEmpty ? [] : new Block[]
            {
                new Subheading("Which scenario the data support"), new ItemList([.. result.Rivals.Select(LearnText.Rival)]),
            },
            new Subheading("Failures by distance, before and after"),
            Curve(result),
            LearnText.Curve(result).Captioned(
                "Failure probability, %", "distance, km", "before", "middle 95 %", "after", "middle 95 %", "Weibull of the data alone, 95 %"),
            new Paragraph(LearnText.CurveReading),
            .. factors.Count == 0 ? [] : new Block[] { factors.Captioned("What is unknown, before and after", "factor", "before: 5 %", "50 %", "95 %", "after: 5 %", "50 %", "95 %", "bits") },
            .. choices.Count == 0 ? [] : new Block[] { choices.Captioned("Choices, before and after") },
            new Paragraph(LearnText.FactorReading),
            .. Apart(scenario, result),
            .. result.Misfit.IsMisfit ? [] : Counts(result),
            .. result.Shape is { } shape ? new Block[] { shape.Share < LearnedShape.Good ? new Warning(LearnText.Bad(shape))
                : new Paragraph(LearnText.Shape(shape)) } : [],
        ];
    }

    /// <summary>The finding: a disagreement of data and model stands before every figure.</summary>
    public static IEnumerable<Block> Headlines(Scenario scenario, LearnResult result)
    {
        LearnedProbability required = result.Curve.First(p => p.DistanceKm == scenario.RequiredKm);
        return
        [
            .. result.Misfit.IsMisfit ? [new Warning(LearnText.Disagree(result)), .. Counts(result)] : Array.Empty<Block>(),
            new Headline(
                $"{RiskText.Question(required.DistanceKm)}, after the data", LearnText.Answer(required),
                [
                    LearnText.Before(result, required), LearnText.Records(result),
                    .. LearnText.Agree(result) is { Length: > 0 } agree ? new[] { agree.Trim() } : [], LearnText.Learned(scenario, result),
                ]),
        ];
    }

    private static IEnumerable<Block> Counts(LearnResult result) =>
    [
        .. result.Misfit.ByDistance.IsEmpty ? [] : new Block[] { LearnText.Misfit(result.Misfit).Captioned("Failures seen, and expected of vehicles that went as far") },
        .. result.Misfit.ByGroup.IsEmpty ? [] : new Block[] { LearnText.Groups(result.Misfit).Captioned("Failures by group") },
    ];

    private static IEnumerable<Block> Apart(Scenario scenario, LearnResult result) => result.Entangled.IsEmpty ? [] :
    [
        new Subheading("What the data could not tell apart"),
        new ItemList([.. result.Entangled.Select(e => Printable.Capital(LearnText.Pair(scenario, e)))]),
    ];

    private static Figure Curve(LearnResult result)
    {
        ImmutableArray<PaperCurve> curves =
        [
            new("after", [.. result.Curve.Select(p => new CurvePoint(p.DistanceKm, p.After))]) { HasBand = true },
            new("before", [.. result.Curve.Select(p => new CurvePoint(p.DistanceKm, p.Before))]),
            .. result.Data.OfWeibull.IsEmpty ? [] : new PaperCurve[]
            { new("Weibull", [.. result.Curve.Select((p, i) => new CurvePoint(p.DistanceKm, result.Data.OfWeibull[i]))]) },
        ];
        int every = Math.Max(1, result.Data.Steps.Length / MostPoints);
        CurvePoint[] points =
        [
            .. result.Data.Steps.Where((_, i) => i % every == 0).Select(s => new CurvePoint(
                s.At, new Interval(1 - s.Survival.Estimate, 1 - s.Survival.High, 1 - s.Survival.Low))),
        ];
        return new Figure(
            new Picture("learned-curve", LearnText.Before(result, result.Curve[^1]), new PaperChart(
                curves, points.Length == 0 ? [] : [new PaperPoints("data", [.. points])], Charting.Km(isLog: true),
                new Reports.Charts.ChartAxis("failed", Figures.Tick) { IsProbability = true })),
            "Probability paper: a lognormal life is a straight line. Full line and band: after the data, with the middle 95 % of what is unknown; "
            + "dashed: before; dotted: a Weibull of the records alone; rings: the records themselves. " + Charting.RunOf(result.Run))
        { InLines = true };
    }
}
