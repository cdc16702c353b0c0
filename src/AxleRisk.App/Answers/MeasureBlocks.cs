using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Analyses.Measurements;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>What knowing more is worth.</summary>
internal static class MeasureBlocks
{
    /// <summary>What to measure next.</summary>
    public static Headline Headline(MeasureResult result) =>
        new("What to measure next", MeasureText.Choice(result), [.. MeasureText.Sentences(result)]);

    private static Block[] ApartBlocks(Apart apart) =>
    [
        ApartText.Table(apart).Captioned(ApartText.Heading),
        new Paragraph(ApartText.Reading(apart)),
    ];

    public static IEnumerable<Block> Of(MeasureResult result) =>
    [
        Headline(result),
        .. result.Measurements.IsEmpty ? [] : new Block[] { MeasureText.Measurements(result).Captioned(MeasureText.MeasurementsHeading) },
        MeasureText.Factors(result).Captioned(MeasureText.FactorsHeading),
        new Paragraph(MeasureText.Reading(result)),
        .. result.Apart is { } apart ? ApartBlocks(apart) : [],
    ];
}
