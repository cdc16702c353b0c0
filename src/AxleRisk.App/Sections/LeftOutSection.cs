using AxleRisk.App.Text;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>In place of a section whose study has no answer: that it was not made, and why.</summary>
internal static class LeftOutSection
{
    /// <summary>The section in place of a study's own; null where the study was made or was never to be.</summary>
    public static Section? Of(ReportStudies studies, StudyStep? step) => studies.LeftOut.FirstOrDefault(l => l.Step == step) is { } left
        ? new Section(left.Title, [new Warning(LeftOutText.InSection(left.Reason))])
        : null;

    /// <summary>For the summary: which sections were not made; nothing where all were.</summary>
    public static IEnumerable<Block> InSummary(ReportStudies studies) =>
        studies.LeftOut.Select(l => new Warning(LeftOutText.InSummary(l.Title)));
}
