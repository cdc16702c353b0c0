using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Sections;

/// <summary>One study of a report: what the command of its name would run.</summary>
/// <param name="Command">The command.</param>
/// <param name="Settings">Evaluations (of each case), seed, sampling plan.</param>
/// <param name="Cases">The number of scenarios that it evaluates.</param>
/// <param name="Searched">About the evaluations of all its questions together, for a study that searches; null for one that does
/// not.</param>
internal sealed record StudyStep(string Command, StudySettings Settings, int Cases = 1, long? Searched = null)
{
    /// <summary>Whether the command decides itself how many of its evaluations it needs, as where none are stated.</summary>
    public bool IsUsual { get; init; }

    /// <summary>All evaluations, for progress.</summary>
    public long Work => Searched ?? Settings.Evaluations * Cases;
}

/// <summary>
/// The studies of a report: those that the scenario gives reason for. Evaluations are in proportion to the commands' own.
/// </summary>
/// <param name="Risk">Failure probability and lives.</param>
/// <param name="Rank">The ranking; null where nothing is uncertain.</param>
/// <param name="Combine">Combined effects; null where nothing is uncertain.</param>
/// <param name="Causes">Causes; null where there is no evidence.</param>
/// <param name="Remedies">Remedies; null where none is stated.</param>
/// <param name="Trip">The trip; null where none is stated.</param>
/// <param name="Fleet">The fleet; null where none is stated.</param>
internal sealed record ReportPlan(
    StudyStep Risk, StudyStep? Rank, StudyStep? Combine, StudyStep? Causes, StudyStep? Remedies, StudyStep? Trip, StudyStep? Fleet)
{
    /// <summary>The evaluations that the others go by.</summary>
    public const long DefaultEvaluations = RiskAnalysis.DefaultEvaluations;

    /// <summary>The studies in the order they are run.</summary>
    public IEnumerable<StudyStep> Steps => new[] { Risk, Rank, Combine, Causes, Remedies, Trip, Fleet }.OfType<StudyStep>();

    /// <summary>The evaluations of all studies together.</summary>
    public long Evaluations => Steps.Sum(s => s.Work);

    /// <summary>The plan for a scenario.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="settings">Evaluations of the risk study, and the seed of all.</param>
    public static ReportPlan Of(LifeModel model, StudySettings settings)
    {
        double scale = (double)settings.Evaluations / DefaultEvaluations;
        StudyStep Step(string command, long evaluations, int cases = 1, string? sampling = null) => new(
            command, settings with
            { Evaluations = Math.Max(1, (long)Math.Round(scale * evaluations)), Sampling = sampling ?? SamplingPlan.Names[0] }, cases);
        bool isUncertain = !model.Factors.Factors.IsEmpty;
        return new ReportPlan(
            Step("risk", DefaultEvaluations, sampling: RiskAnalysis.DefaultSampling(model)),
            isUncertain ? OfRank(Step, isUsual: settings.Evaluations == DefaultEvaluations) : null,
            isUncertain ? Step("combine", CombineAnalysis.DefaultEvaluations) : null,
            isUncertain && !model.Scenario.Evidence.IsEmpty ? Step("causes", CausesAnalysis.DefaultEvaluations) : null,
            model.Scenario.Remedies.IsEmpty
                ? null : Step("remedies", Comparison.DefaultEvaluations, RemediesAnalysis.CasesOf(model.Scenario),
                RemediesAnalysis.DefaultSampling(model)),
            model.Scenario.Trip is null ? null : OfTrip(model.Scenario, Step),
            model.Scenario.Fleet is null ? null : OfFleet(model.Scenario.Fleet, Step));
    }

    /// <summary>The ranking as the command does it by itself; or with a stated number of evaluations.</summary>
    private static StudyStep OfRank(StepMaker step, bool isUsual) => isUsual
        ? step("rank", RankAnalysis.MostEvaluations) with { IsUsual = true }
        : step("rank", RankAnalysis.TypicalEvaluations);

    private static StudyStep OfTrip(Scenario scenario, StepMaker step)
    {
        StudyStep trip = Within(step("trip", TripAnalysis.DefaultEvaluations, 1,
            RiskAnalysis.DefaultSampling(new LifeModel(Core.Scenarios.Trip.Whole(scenario)))), TripAnalysis.LeastRows,
            TripAnalysis.MostRows);
        return trip with
        {
            Searched = TripAnalysis.EvaluationsOf(scenario, trip.Settings.Evaluations,
            scenario.Trip!.TargetRisk is not null)
        };
    }

    private static StudyStep OfFleet(Core.Scenarios.Fleet stated, StepMaker step)
    {
        StudyStep fleet = Within(step("fleet", FleetAnalysis.DefaultEvaluations, 1, FleetAnalysis.DefaultSampling),
            FleetAnalysis.LeastEvaluations, FleetAnalysis.MostEvaluations);
        return fleet with { Searched = FleetAnalysis.ExpectedEvaluations(stated, fleet.Settings.Evaluations) };
    }

    /// <summary>A step with as many evaluations as its study takes.</summary>
    private static StudyStep Within(StudyStep step, long least, long most) =>
        step with { Settings = step.Settings with { Evaluations = Math.Clamp(step.Settings.Evaluations, least, most) } };

    private delegate StudyStep StepMaker(string command, long evaluations, int cases = 1, string? sampling = null);
}
