using System.Collections.Immutable;
using AxleRisk.App.Studies;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Sections;

/// <summary>
/// The studies of a report: those that the scenario gives reason for. Evaluations are in proportion to the commands' own.
/// </summary>
/// <param name="Steps">The studies in the order they are run; the risk first.</param>
internal sealed record ReportPlan(ImmutableArray<StudyStep> Steps)
{
    /// <summary>The evaluations that the others go by.</summary>
    public static long DefaultEvaluations => StudyBook.Risk.DefaultEvaluations;

    /// <summary>The evaluations of all studies together.</summary>
    public long Evaluations => Steps.Sum(s => s.Work);

    /// <summary>What the risk study is run with, and the headline of the others.</summary>
    public StudySettings Risk => Steps[0].Settings;

    /// <summary>The plan for a scenario.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="evaluations">Evaluations of the risk study.</param>
    /// <param name="seed">The seed of all.</param>
    public static ReportPlan Of(LifeModel model, long evaluations, ulong seed) => new(
    [
        .. StudyBook.All.Where(study => study.WhyNot(model.Scenario) is null)
            .Select(study => study.Step(model, seed, (double)evaluations / DefaultEvaluations)),
    ]);
}
