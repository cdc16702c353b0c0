using AxleRisk.App.Text;

namespace AxleRisk.App.Studies;

/// <summary>All studies, in the order in which a report tells of them.</summary>
internal static class StudyBook
{
    public static RiskStudy Risk { get; } = new();

    public static RankStudy Rank { get; } = new();

    public static CombineStudy Combine { get; } = new();

    public static TripStudy Trip { get; } = new();

    public static FleetStudy Fleet { get; } = new();

    public static CausesStudy Causes { get; } = new();

    public static RemediesStudy Remedies { get; } = new();

    public static DecideStudy Decide { get; } = new();

    public static MeasureStudy Measure { get; } = new();

    public static InspectStudy Inspect { get; } = new();

    public static SweepStudy Sweep { get; } = new();

    public static LearnStudy Learn { get; } = new();

    /// <summary>Those that a report is made of.</summary>
    public static IReadOnlyList<IStudy> All { get; } =
        [Risk, Rank, Combine, Trip, Fleet, Causes, Learn, Remedies, Decide, Measure, Inspect, Sweep];

    /// <summary>That a study does not apply, as a sentence of its own.</summary>
    public static string Sentence(string whyNot) => Printable.Capital(whyNot) + ".";
}
