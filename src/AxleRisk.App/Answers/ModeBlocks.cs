using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>Which mode fails first; nothing where fatigue is the only one.</summary>
internal static class ModeBlocks
{
    public static IEnumerable<Block> Of(RiskResult result) => result.Modes.IsEmpty ? [] :
    [
        ModeText.FirstTable(result).Captioned("Which mode fails first"),
        .. double.IsNaN(result.Modes[0].Without)
            ? [] : new Block[] { ModeText.WithoutTable(result).Captioned("With one mode switched off") },
        .. Sections(result.Modes.Select(m => m.Mode)),
    ];

    public static IEnumerable<Block> Of(RankResult result) =>
        result.Modes.IsEmpty ? [] : [ModeText.Table(result).Captioned("Modes of failure"), .. Sections(result.Modes.Select(m => m.Mode))];

    private static IEnumerable<Block> Sections(IEnumerable<FailureMode> modes) =>
        modes.Any(m => m.Key.StartsWith(CheckedSection.Table + ".", StringComparison.Ordinal)) ? [new Paragraph(ModeText.ByLeg)] : [];
}
