using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>The failure probability over distance, the lives, the damage by leg.</summary>
internal static class RiskBlocks
{
    /// <summary>The end of the plain curve, as a multiple of the required distance.</summary>
    private const double PlainEnd = 2;

    /// <summary>The blocks.</summary>
    /// <param name="result">The result.</param>
    /// <param name="curve">The same run at many distances, to be drawn; null where nothing is to be drawn.</param>
    public static IEnumerable<Block> Of(RiskResult result, RiskResult? curve = null) =>
    [
        Headline(result),
        .. curve is null ? [] : Drawn(result, curve),
        RiskText.DistanceTable(result).Captioned(RiskText.DistancesHeading, "distance km", "failed", "95 % interval", "beta", "note"),
        .. RareEventText.Speaker(result) is { } speaker ? RareEventBlocks.Of(speaker, RareEventText.DesignHeading(speaker)) : [],
        .. ModeBlocks.Of(result),
        RiskText.LifeTable(result).Captioned(RiskText.LivesHeading),
        RiskText.LegTable(result).Captioned(RiskText.LegsHeading),
        .. result.Depths.IsEmpty ? []
            : new Block[] { DepthText.Table(result.Depths).Captioned(DepthText.Heading), new Paragraph(DepthText.Reading) },
    ];

    /// <summary>The main figure.</summary>
    public static Headline Headline(RiskResult result) => new(
        RiskText.Question(result.RequiredKm), RiskText.Answer(result.AtRequired.Probability),
        [RiskText.Precision(result), $"In words: {RiskText.InWords(result.AtRequired.Probability)}"]);

    private static Figure[] Drawn(RiskResult result, RiskResult curve) =>
    [
        new(
            new Picture("failure-curve", Alternative(result), Chart(result, curve, isLog: false)),
            $"{RiskText.DistancesHeading}, to twice the required distance, which is marked.{BandWords}{RareWords(result)} {Charting.RunOf(result.Run)}"),
        new(
            new Picture("failure-curve-log", $"{Alternative(result)} Both scales are logarithmic.", Chart(result, curve, isLog: true)),
            $"The same on scales of ratios, from a tenth to five times the required distance: early failures can be read here.{BandWords}{RareWords(result)}"
                + $" {Charting.RunOf(result.Run)}"),
    ];

    private const string BandWords = " The band is the 95 % interval of sampling; it may be no wider than the line.";

    private static string RareWords(RiskResult result) =>
        result.RareEvents.IsEmpty ? "" : " Rings with intervals: too rare to sample, found as the notes below tell.";

    private static string Alternative(RiskResult result) =>
        $"A rising curve. {RiskText.Question(result.RequiredKm)} it reaches {Figures.Probability(result.AtRequired.Probability)}; "
        + string.Join(", ", result.Lives.Select(l => $"{l.Percent:0.#} % at {Figures.Km(l.LifeKm.Estimate)} km")) + ".";

    private static CurveChart Chart(RiskResult result, RiskResult curve, bool isLog)
    {
        double end = isLog ? double.PositiveInfinity : PlainEnd * result.RequiredKm * (1 + 1e-9);

        // Where the table needed rare-event answers, sampling alone says nothing, and so draws nothing.
        double start = result.Distances.Where(d => d.Method != RiskMethod.Importance).Select(d => d.DistanceKm)
            .Append(double.PositiveInfinity).Min();
        IEnumerable<DistanceRisk> sampled = curve.Distances.Where(d => d.DistanceKm >= start * (1 - 1e-9) && d.DistanceKm <= end);
        IEnumerable<DistanceRisk> rare = result.Distances.Where(d => d.Method == RiskMethod.Importance && d.DistanceKm <= end);
        return new CurveChart(
            [.. sampled.Select(Point)], [.. rare.Select(Point)], Point(result.AtRequired),
            [$"required: {Figures.Exact(result.RequiredKm)} km", $"{Figures.Probability(result.AtRequired.Probability)} fail by then"],
            Charting.Km(isLog), Charting.Percent("failed", isLog));
    }

    private static CurvePoint Point(DistanceRisk d) => new(d.DistanceKm, d.Probability);
}
