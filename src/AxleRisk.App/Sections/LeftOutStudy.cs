using AxleRisk.App.Studies;

namespace AxleRisk.App.Sections;

/// <summary>A study of a report that has no answer to its scenario; the rest of the report stands without it.</summary>
/// <param name="Step">The study.</param>
/// <param name="Reason">Why there is no answer and what would allow one, in the words of its command: the end of a sentence.</param>
internal sealed record LeftOutStudy(StudyStep Step, string Reason)
{
    /// <summary>The heading of its section.</summary>
    public string Title => Step.Study.Title;
}
