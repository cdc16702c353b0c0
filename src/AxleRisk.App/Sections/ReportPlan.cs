using System.Collections.Immutable;
using AxleRisk.App.Studies;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Sweeps;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Sections;

/// <summary>
/// The studies of a report: those that the scenario gives reason for. Evaluations are in proportion to the commands' own.
/// </summary>
/// <param name="Steps">The studies in the order they are run; the risk first.</param>
internal sealed record ReportPlan(ImmutableArray<StudyStep> Steps)
{
    /// <summary>What the report's own command needs beside the scenario.</summary>
    public string Arguments => string.Concat(Steps.Where(s => s.Study is SweepStudy).Select(s => s.Arguments));

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
    /// <param name="asked">Inputs to be moved over a range, each in a section of its own; the scenario does not ask for it.</param>
    public static ReportPlan Of(LifeModel model, long evaluations, ulong seed, ImmutableArray<SweptInput> asked = default) => new(
    [
        .. StudyBook.All
            .Concat(asked.IsDefault ? [] : asked.Select(input => new SweepStudy([input], SweepText.Title(model.Scenario, [input]))))
            .Where(study => study.WhyNot(model.Scenario) is null)
            .Select(study => study.Step(model, seed, (double)evaluations / DefaultEvaluations)),
    ]);
}
