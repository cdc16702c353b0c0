using AxleRisk.App.Answers;
using AxleRisk.App.Charts;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Screens.Pages.Causes;

/// <summary>What the evidence says, as lines of the page.</summary>
internal static class CausesLines
{
    public static IEnumerable<PageLine> Of(CausesResult result, IEnumerable<Block> notes, int width) =>
    [
        .. PageLine.Of(SurpriseText.Sentences(result).Select(s => new Paragraph(s)), width), Size(result), PageLine.Empty,
        .. Explanations(result, width),
        .. PageLine.Of([.. CausesBlocks.Told(result), .. CausesBlocks.Weighed(result), .. CausesBlocks.Factors(result), .. notes], width),
    ];

    private static PageLine Size(CausesResult result)
    {
        bool isLow = result.EffectiveSampleSize < 5 * CausesAnalysis.LeastEffectiveSize;
        string text = $"Effective sample size {Figures.Count((long)result.EffectiveSampleSize)} of {Figures.Count(result.Rows)} rows"
            + (isLow ? ": few; more evaluations make it surer." : ".");
        return PageLine.Of(text, isLow ? Ink.Warning : Ink.Quiet);
    }

    /// <summary>The explanations as bars of their posterior probability, with the prior before it.</summary>
    private static IEnumerable<PageLine> Explanations(CausesResult result, int width)
    {
        if (result.Explanations.IsEmpty)
        {
            return [];
        }

        Bar[] bars =
        [
            .. result.Explanations.Select(e => new Bar(
                Printable.Line(CausesText.NameOf(result, e)), e.Posterior.Estimate, e.Posterior.Low, e.Posterior.High,
                $"{Figures.Share(e.Prior),7} -> "
                    + (e.Settled is null
                    ? $"{Figures.Share(e.Posterior.Estimate),7} ({Figures.Share(e.Posterior.Low).Replace(" %", "")}..{Figures.Share(e.Posterior.High).Replace(" %", "")})" : $"{CausesText.Settled(e)}, settled"))),
        ];
        int text = bars.Max(b => b.Text.Length);
        int room = Math.Min(width, Layout.Width);
        return
        [
            PageLine.Of(CausesText.ExplanationsHeading, Ink.Heading),
            .. Pictures.Lines(BarChart.Draw([.. bars.Select(b => b with { Text = b.Text.PadRight(text) })], room, bars.Length, full: 1)),
            .. PageLine.Of([new Paragraph(CausesText.ExplanationsReading(result))], room), PageLine.Empty,
        ];
    }
}
