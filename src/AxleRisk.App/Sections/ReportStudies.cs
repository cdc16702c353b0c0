using System.Collections.Immutable;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Sections;

/// <summary>Everything that a report is made of: the scenario and its studies as they came out. The sections only tell of it.</summary>
/// <param name="Document">The scenario.</param>
/// <param name="Model">The scenario made ready.</param>
/// <param name="Plan">What was to be run.</param>
/// <param name="Base">The base case.</param>
/// <param name="Made">The studies that were made, in the order they were run; the risk first.</param>
/// <param name="LeftOut">Those of the plan that have no answer to this scenario, in the order they were tried.</param>
internal sealed record ReportStudies(
    ScenarioDocument Document, LifeModel Model, ReportPlan Plan, BaseCaseResult Base, ImmutableArray<MadeStudy> Made,
    ImmutableArray<LeftOutStudy> LeftOut)
{
    /// <summary>The risk.</summary>
    public RiskResult Risk => Find<RiskRun>()!.Result;

    /// <summary>A result by its type; null where its study was not made.</summary>
    public T? Find<T>()
        where T : class => Made.Select(m => m.Result).OfType<T>().FirstOrDefault();

    /// <summary>
    /// Runs the studies of a plan one after another. One that does not fit the scenario is left out; the risk study, which a
    /// report is about, may not be.
    /// </summary>
    /// <exception cref="OperationCanceledException">The run was ended early: half a report is none.</exception>
    /// <exception cref="StudyException">The risk study does not fit the scenario.</exception>
    public static ReportStudies Run(ScenarioDocument document, LifeModel model, ReportPlan plan, RunOptions options)
    {
        var made = ImmutableArray.CreateBuilder<MadeStudy>();
        var leftOut = ImmutableArray.CreateBuilder<LeftOutStudy>();
        HeadlineSource anew = Headlines.Of(model, plan.Risk);
        HeadlineSource headlines = (distancesKm, run) =>
            distancesKm is [var km] && km == model.Scenario.RequiredKm && made.Count > 0 && made[0].Result is RiskRun risk
                ? [RiskHeadline.Of(risk.Result)] : anew(distancesKm, run);
        long before = 0;
        foreach (StudyStep step in plan.Steps)
        {
            long start = before;
            before += step.Work;
            try
            {
                made.Add(step.Study.Make(
                    document, model, step, headlines, options with { Progress = done => options.Progress?.Invoke(start + done) }));
            }
            catch (StudyException e) when (made.Count > 0)
            {
                // Ended early, a study may have too few samples for an answer: that is no fault of the scenario.
                options.Cancellation.ThrowIfCancellationRequested();
                leftOut.Add(new LeftOutStudy(step, e.Message));
            }

            options.Cancellation.ThrowIfCancellationRequested();
        }

        return new ReportStudies(document, model, plan, BaseCaseAnalysis.Run(model), made.ToImmutable(), leftOut.ToImmutable());
    }
}
