using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>What the evidence says of its causes.</summary>
internal static class CausesBlocks
{
    public static IEnumerable<Block> Of(CausesResult result) =>
    [
        .. SurpriseText.Sentences(result).Select(s => new Paragraph(s)),
        .. Told(result),
        .. Modes(result),
        .. Explanations(result),
        .. Weighed(result),
        .. Factors(result),
    ];

    /// <summary>The investigator's finding.</summary>
    public static Headline Headline(CausesResult result) => new(
        CausesText.ToldHeading,
        CausesText.Told(result) is [var first, ..] ? Printable.Capital(first.Split(':')[0]) : CausesText.NothingTold,
        [.. SurpriseText.Sentences(result), .. CausesText.Told(result).Take(3)]);

    /// <summary>What the evidence points to, in words.</summary>
    public static IEnumerable<Block> Told(CausesResult result) =>
    [
        new Subheading(CausesText.ToldHeading),
        CausesText.Told(result) is { Count: > 0 } told
            ? new ItemList([.. told], IsNumbered: true) : new Paragraph(CausesText.NothingTold),
    ];

    /// <summary>The factors and choices before and after the evidence, and how to read them.</summary>
    public static IEnumerable<Block> Factors(CausesResult result) =>
    [
        CausesText.FactorTable(result).Captioned(
            CausesText.FactorsHeading, "factor", "before: 5 %", "50 %", "95 %", "after: 5 %", "50 %", "95 %", "tenth x"),
        .. CausesText.ChoiceTable(result) is { Count: > 0 } choices
            ? new Block[] { choices.Captioned(CausesText.ChoicesHeading) } : [],
        new Paragraph(CausesText.Reading(result)),
    ];

    /// <summary>How far the evidence bears on each explanation, and what would have become of the axle without it.</summary>
    public static IEnumerable<Block> Weighed(CausesResult result) =>
    [
        .. ButForText.OddsTable(result) is { Count: > 0 } odds
            ? [odds.Captioned(ButForText.OddsHeading), .. ButForText.OddsReading(result).Select(s => new Paragraph(s))]
            : Array.Empty<Block>(),
        .. ButForText.Sentences(result).Any()
            ? [new Subheading(ButForText.Heading), new ItemList([.. ButForText.Sentences(result)])] : Array.Empty<Block>(),
        .. ButForText.Reading(result) is { Length: > 0 } reading ? [new Paragraph(reading)] : Array.Empty<Block>(),
    ];

    /// <summary>Which mode, and so which checked section, the evidence fits.</summary>
    public static IEnumerable<Block> Modes(CausesResult result) => result.Modes.IsEmpty ? [] :
        [ModeText.FoundTable(result).Captioned(ModeText.FoundHeading), new Paragraph(ModeText.FoundReading(result))];

    private static IEnumerable<Block> Explanations(CausesResult result)
    {
        if (result.Explanations.IsEmpty)
        {
            return [];
        }

        ExplanationShift[] drawn = [.. result.Explanations.Where(e => e.Names.Length < 2 && e.Settled is null)];
        return
        [
            .. drawn.Length == 0 ? [] : new Block[]
            {
                new Figure(
                    new Picture("explanations", Alternative(result, drawn),
                        new RowsChart([.. drawn.Select(e => Row(result, e))], Charting.Percent("probability"))),
                    $"{CausesText.ExplanationsHeading}. Ring: before; dot: after, with its 95 % interval. Pairs stand in the table. {Charting.RunOf(result.Run)}"),
            },
            CausesText.ExplanationTable(result).Captioned(CausesText.ExplanationsHeading),
            new Paragraph(CausesText.ExplanationsReading(result)),
        ];
    }

    private static string Alternative(CausesResult result, ExplanationShift[] drawn) =>
        string.Join("; ", drawn.Select(e => $"{CausesText.NameOf(result, e)} {Words(e)}")) + ".";

    private static ChartRow Row(CausesResult result, ExplanationShift e) => new(
        CausesText.NameOf(result, e), Words(e), [new ChartMark(MarkShape.Ring, e.Prior), new ChartMark(MarkShape.Dot, e.Posterior)]);

    private static string Words(ExplanationShift e) => $"{Figures.Share(e.Prior)} to {Figures.Share(e.Posterior.Estimate)}";
}
