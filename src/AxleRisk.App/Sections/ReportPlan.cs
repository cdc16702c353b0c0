using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Sections;

/// <summary>One study of a report: what the command of its name would run.</summary>
/// <param name="Command">The command.</param>
/// <param name="Settings">Evaluations (of each case), seed, sampling plan.</param>
/// <param name="Cases">The number of scenarios that it evaluates.</param>
internal sealed record StudyStep(string Command, StudySettings Settings, int Cases = 1);

/// <summary>The studies of a report: those that the scenario gives reason for. Evaluations are in proportion to the commands' own.</summary>
/// <param name="Risk">Failure probability and lives.</param>
/// <param name="Rank">The ranking; null where nothing is uncertain.</param>
/// <param name="Combine">Combined effects; null where nothing is uncertain.</param>
/// <param name="Causes">Causes; null where there is no evidence.</param>
/// <param name="Remedies">Remedies; null where none is stated.</param>
internal sealed record ReportPlan(StudyStep Risk, StudyStep? Rank, StudyStep? Combine, StudyStep? Causes, StudyStep? Remedies)
{
    /// <summary>The evaluations that the others go by.</summary>
    public const long DefaultEvaluations = RiskAnalysis.DefaultEvaluations;

    /// <summary>The studies in the order they are run.</summary>
    public IEnumerable<StudyStep> Steps => new[] { Risk, Rank, Combine, Causes, Remedies }.OfType<StudyStep>();

    /// <summary>The evaluations of all studies together.</summary>
    public long Evaluations => Steps.Sum(s => s.Settings.Evaluations * s.Cases);

    /// <summary>The plan for a scenario.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="settings">Evaluations of the risk study, and the seed of all.</param>
    public static ReportPlan Of(LifeModel model, StudySettings settings)
    {
        double scale = (double)settings.Evaluations / DefaultEvaluations;
        StudyStep Step(string command, long evaluations, int cases = 1, string? sampling = null) => new(
            command, settings with { Evaluations = Math.Max(1, (long)Math.Round(scale * evaluations)), Sampling = sampling ?? SamplingPlan.Names[0] }, cases);
        bool isUncertain = !model.Factors.Factors.IsEmpty;
        return new ReportPlan(
            Step("risk", DefaultEvaluations, sampling: RiskAnalysis.DefaultSampling(model)),
            isUncertain ? Step("rank", RankAnalysis.DefaultEvaluations(model)) : null,
            isUncertain ? Step("combine", CombineAnalysis.DefaultEvaluations) : null,
            isUncertain && !model.Scenario.Evidence.IsEmpty ? Step("causes", CausesAnalysis.DefaultEvaluations) : null,
            model.Scenario.Remedies.IsEmpty ? null : Step("remedies", Comparison.DefaultEvaluations, RemediesAnalysis.CasesOf(model.Scenario)));
    }
}
