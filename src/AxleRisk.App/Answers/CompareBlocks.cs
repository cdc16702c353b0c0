using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>Scenarios side by side.</summary>
internal static class CompareBlocks
{
    public static IEnumerable<Block> Of(IReadOnlyList<ScenarioDocument> documents, ComparisonResult result) =>
    [
        .. CompareText.Sentences(result).Select(s => new Paragraph(s)),
        .. ChangeBlocks.Of(result.DistanceKm, [.. result.Cases.Select((c, i) => (CompareText.Name(i, documents[i]), c))]),
    ];
}
