using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Measurements;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>What knowing more is worth.</summary>
internal static class MeasureBlocks
{
    /// <summary>What to measure next.</summary>
    public static Headline Headline(MeasureResult result) =>
        new("What to measure next", MeasureText.Choice(result), [.. MeasureText.Sentences(result)]);

    public static IEnumerable<Block> Of(MeasureResult result) =>
    [
        Headline(result),
        .. result.Measurements.IsEmpty ? [] : new Block[] { MeasureText.Measurements(result).Captioned(MeasureText.MeasurementsHeading) },
        MeasureText.Factors(result).Captioned(MeasureText.FactorsHeading),
        new Paragraph(MeasureText.Reading(result)),
    ];
}
