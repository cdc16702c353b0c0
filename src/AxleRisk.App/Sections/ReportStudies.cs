using System.Collections.Immutable;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Sections;

/// <summary>Everything that a report is made of: the scenario and the results of its studies. The sections only tell of it.</summary>
internal sealed record ReportStudies
{
    /// <summary>The ends of the drawn curve, as multiples of the required distance, and the number of its points.</summary>
    private const double CurveFrom = 0.1, CurveTo = 5;
    private const int CurvePoints = 80;

    public required ScenarioDocument Document { get; init; }

    public required LifeModel Model { get; init; }

    public required ReportPlan Plan { get; init; }

    public required BaseCaseResult Base { get; init; }

    public required RiskResult Risk { get; init; }

    /// <summary>The same run as <see cref="Risk"/>, at many distances; sampled alone, without rare-event answers.</summary>
    public required RiskResult Curve { get; init; }

    public required RankResult? Ranking { get; init; }

    public required CombineResult? Combined { get; init; }

    public required CausesResult? Causes { get; init; }

    public required RemediesResult? Remedies { get; init; }

    public required TripResult? Trip { get; init; }

    public required FleetResult? Fleet { get; init; }

    /// <summary>The studies of the plan that have no answer to this scenario, in the order they were tried.</summary>
    public required ImmutableArray<LeftOutStudy> LeftOut { get; init; }

    /// <summary>The studies behind the report, in the order they were run.</summary>
    public IEnumerable<StudyStep> Made => Plan.Steps.Where(s => LeftOut.All(l => l.Step != s));

    /// <summary>
    /// Runs the studies of a plan one after another. One that does not fit the scenario is left out; the risk study, which a
    /// report is about, may not be.
    /// </summary>
    /// <exception cref="OperationCanceledException">The run was ended early: half a report is none.</exception>
    /// <exception cref="StudyException">The risk study does not fit the scenario.</exception>
    public static ReportStudies Run(ScenarioDocument document, LifeModel model, ReportPlan plan, RunOptions options)
    {
        long before = 0;
        var leftOut = ImmutableArray.CreateBuilder<LeftOutStudy>();
        T Do<T>(StudyStep step, Func<StudySettings, RunOptions, T> study)
        {
            long start = before;
            before += step.Work;
            T result = study(step.Settings, options with { Progress = done => options.Progress?.Invoke(start + done) });
            options.Cancellation.ThrowIfCancellationRequested();
            return result;
        }

        T? Try<T>(StudyStep? step, string title, Func<StudySettings, RunOptions, T> study)
            where T : class
        {
            try
            {
                return step is null ? null : Do(step, study);
            }
            catch (StudyException e)
            {
                // Ended early, a study may have too few samples for an answer: that is no fault of the scenario.
                options.Cancellation.ThrowIfCancellationRequested();
                leftOut.Add(new LeftOutStudy(step!, title, e.Message));
                return null;
            }
        }

        RiskState? state = null;
        RiskResult risk = Do(plan.Risk, (settings, run) =>
        {
            (RiskResult result, state) = RiskAnalysis.Run(model, settings, new RiskQuestion(), run);
            return result;
        });
        RiskHeadline headline = RiskHeadline.Of(risk);
        ImmutableArray<RiskHeadline> At(ImmutableArray<double> km) =>
            km.IsEmpty ? [] : RiskHeadline.Of(model, km, plan.Risk.Settings, options);
        double required = model.Scenario.RequiredKm;
        var question = new RiskQuestion
        {
            Method = risk.Method,
            DistancesKm = [.. risk.Distances.Select(d => d.DistanceKm), .. Enumerable.Range(0, CurvePoints)
                .Select(i => required * CurveFrom * Math.Pow(CurveTo / CurveFrom, i / (CurvePoints - 1.0)))],
        };
        return new ReportStudies
        {
            Document = document,
            Model = model,
            Plan = plan,
            Base = BaseCaseAnalysis.Run(model),
            Risk = risk,
            Curve = RiskAnalysis.Summarise(model, state!, question, options, isPartial: false),
            Ranking = Try(plan.Rank, RankSection.Title, (settings, run) => RankAnalysis.Run(
                model, settings, run, RankQuestion.Of(allSubsets: false, evaluationsStated: !plan.Rank!.IsUsual)).With(headline)),
            Combined = Try(plan.Combine, CombineSection.Title,
                (settings, run) => CombineAnalysis.Run(model, settings, new CombineLimits(), run) with { Headline = headline }),
            Causes = Try(plan.Causes, CausesSection.Title, (settings, run) => CausesAnalysis.Run(model, model.Scenario.Evidence, settings,
                run).With(At(model.Scenario.Evidence.Life?.DistancesKm ?? []))),
            Remedies = Try(plan.Remedies, RemediesSection.Title, (settings, run) => RemediesAnalysis.Run(model, settings, run)
                .With(headline)),
            Trip = Try(plan.Trip, TripSection.Title,
                (settings, run) => TripAnalysis.Run(model.Scenario, settings, new TripQuestion(), run)),
            Fleet = Try(plan.Fleet, FleetSection.Title, (settings, run) => FleetAnalysis.Run(model, settings, run) with
            { Headline = At(model.Scenario.Fleet!.TargetKm).FirstOrDefault() }),
            LeftOut = leftOut.ToImmutable(), // last: the lines above fill it
        };
    }
}
