using AxleRisk.App.Screens.Pages;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Live;

/// <summary>
/// The scenario as it was when it was pinned. Every state after it is compared with it by the compare study, with common random
/// numbers, so that a small change stands out at once from the error of sampling.
/// </summary>
internal sealed class Baseline : IDisposable
{
    /// <summary>Answers on the way: the change of an edit is there before the whole study is done.</summary>
    private static readonly Stages Quick = new(8_192);

    private readonly Session session;
    private readonly LifeModel model;
    private readonly int state;
    private readonly RiskHeadline? headline;

    /// <summary>Pins the scenario as it is.</summary>
    public Baseline(Session session)
    {
        this.session = session;
        model = session.Model;
        state = session.State;
        headline = session.Risk is { Fresh: { Run.IsPartial: false } risk, Run.IsSnapshot: false } ? RiskHeadline.Of(risk) : null;
        Run = session.NewRun<ComparisonResult>(() => session.State);
    }

    /// <summary>The comparison in the background.</summary>
    public StudyRun<ComparisonResult> Run { get; }

    /// <summary>Whether the scenario is as it was pinned.</summary>
    public bool IsPresent => session.State == state;

    /// <summary>The comparison, if it answers the scenario as it stands.</summary>
    public ComparisonResult? Fresh => Run.State == session.State ? Run.Result : null;

    /// <summary>Compares the scenario as it now is.</summary>
    public void Follow()
    {
        if (IsPresent || (Fresh is { Run.IsPartial: false } && !Run.IsSnapshot))
        {
            Run.Cancel();
            return;
        }

        LifeModel[] models = [model, session.Model];
        double km = session.Model.Scenario.RequiredKm;
        var settings = new StudySettings(session.Risk.Evaluations, session.Seed, Comparison.DefaultSampling(models));

        // The figure of the risk study, where it is that of this distance.
        RiskHeadline? known = headline?.DistanceKm == km ? headline : null;
        Run.Start(session.State, Quick.All(settings.Evaluations).Sum(n => n * models.Length), (options, publish) => Quick.Run(
            settings, models.Length, options, publish,
            (s, o) => Comparison.Run(models, km, s, o) is var result && known is not null ? result.With(known) : result, r => r.Run));
    }

    /// <inheritdoc/>
    public void Dispose() => Run.Dispose();
}
