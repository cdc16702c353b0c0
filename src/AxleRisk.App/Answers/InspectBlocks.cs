using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Inspections;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>What looking for the crack brings.</summary>
internal static class InspectBlocks
{
    /// <summary>The failure probability with the looks, and the plan.</summary>
    public static Headline Headline(InspectResult result) =>
        new(InspectText.Question(result), InspectText.Answer(result), [.. InspectText.Sentences(result)]);

    public static IEnumerable<Block> Of(InspectResult result) =>
    [
        Headline(result),
        new Warning(InspectText.Limits),
        InspectText.Curve(result).Captioned(
            InspectText.CurveHeading, "distance km", "without a look", "95 % interval", "with the looks", "95 % interval"),
        Drawn(result),
        .. result.Looks.IsEmpty ? [] : new Block[] { InspectText.LookTable(result).Captioned(InspectText.LooksHeading) },
        .. result.Plans.IsEmpty ? [] : new Block[] { InspectText.PlanTable(result).Captioned(InspectText.PlansHeading) },
        new Paragraph(InspectText.Reading),
    ];

    private static Figure Drawn(InspectResult result) => new(
        new Picture("inspection-curve", Alternative(result), new PaperChart(
            [
                new PaperCurve("with the looks", Points(result, result.WithPlan)) { HasBand = true },
                new PaperCurve("without a look", Points(result, result.WithoutPlan)),
            ],
            [], Charting.Km(), Charting.Percent("failed"))
        { FromZero = true }),
        $"Full line: with the looks; dashed: without. {Charting.RunOf(result.Run)}");

    private static string Alternative(InspectResult result) =>
        $"Two rising curves: by {Figures.Exact(result.RequiredKm)} km {Figures.Probability(result.WithoutPlan[^1].Failed)} fail without a look, "
        + $"{Figures.Probability(result.WithPlan[^1].Failed)} with the looks.";

    private static System.Collections.Immutable.ImmutableArray<CurvePoint> Points(
        InspectResult result, IEnumerable<InspectedDistance> curve) =>
        [new CurvePoint(result.FromKm, new(0, 0, 0)), .. curve.Select(d => new CurvePoint(d.Km, d.Failed))];
}
