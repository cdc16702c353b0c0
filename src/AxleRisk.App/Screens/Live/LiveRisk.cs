using System.Collections.Immutable;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Live;

/// <summary>
/// The risk study of the open scenario. What a tenth of a second of evaluations tells is shown; the answer is renewed while more
/// are made, up to the number asked for. A finished one has the digits that the risk command gives.
/// </summary>
internal sealed class LiveRisk : IDisposable
{
    /// <summary>Points of the curve.</summary>
    private const int CurvePoints = 25;

    /// <summary>The curve goes from the required distance over this to the required distance times this.</summary>
    private const double CurveReach = 10;

    /// <summary>Results so far come when the whole one is not there by then, and no faster than a reader can follow.</summary>
    private static readonly TimeSpan First = TimeSpan.FromMilliseconds(100), Pause = TimeSpan.FromMilliseconds(400);

    /// <summary>Where the end is nearer than this, an answer on the way would only delay it.</summary>
    private static readonly TimeSpan Near = TimeSpan.FromMilliseconds(150);

    private readonly Session session;

    public LiveRisk(Session session)
    {
        this.session = session;
        Run = session.NewRun<RiskResult>(() => session.State);
    }

    /// <summary>The study in the background.</summary>
    public StudyRun<RiskResult> Run { get; }

    /// <summary>Evaluations that a study spends.</summary>
    public long Evaluations { get; private set; } = RiskAnalysis.DefaultEvaluations;

    /// <summary>The result, if it answers the scenario as it stands.</summary>
    public RiskResult? Fresh => Run.State == session.State ? Run.Result : null;

    /// <summary>The settings of the study of a scenario.</summary>
    public StudySettings SettingsOf(LifeModel model) => new(Evaluations, session.Seed, RiskAnalysis.DefaultSampling(model));

    /// <summary>The failure probabilities that this study ends with: taken over where it has ended, else found anew.</summary>
    public HeadlineSource Headlines(LifeModel model)
    {
        HeadlineSource anew = Studies.Headlines.Of(model, SettingsOf(model));
        return (distancesKm, options) =>
            distancesKm is [var km] && km == model.Scenario.RequiredKm && Fresh is { Run.IsPartial: false } ended && session.Model == model
                ? [RiskHeadline.Of(ended)] : anew(distancesKm, options);
    }

    /// <summary>Starts the study of the scenario as it stands, with another number of evaluations if one is given.</summary>
    public void Start(long? evaluations = null)
    {
        Evaluations = evaluations ?? Evaluations;
        LifeModel model = session.Model;
        StudySettings settings = SettingsOf(model);
        TimeProvider clock = session.Clock;
        TimeSpan before = Run.IsSnapshot ? TimeSpan.Zero : Run.ResultElapsed;
        Run.Start(session.State, Evaluations, (options, publish) =>
        {
            long start = clock.GetTimestamp();
            (long last, TimeSpan pause) = (start, First);
            var picture = new RiskQuestion { PictureKm = PictureKm(model) };
            RiskQuestion question = picture with
            {
                IsCheckpointDue = () => clock.GetElapsedTime(last) >= pause,
                Checkpoint = state =>
                {
                    bool isNear = Left(state, clock.GetElapsedTime(start), before) <= Near;
                    if (!isNear)
                    {
                        publish(RiskAnalysis.Summarise(model, state, picture, options, isPartial: true));
                    }

                    (last, pause) = (clock.GetTimestamp(), isNear ? Near : Pause);
                },
            };
            return RiskAnalysis.Run(model, settings, question, options).Result;
        });
    }

    /// <summary>Goes on with the scenario as it now is: with the answer that is known, or with a study anew.</summary>
    public void Follow()
    {
        if (Fresh is { Run.IsPartial: false } && !Run.IsSnapshot)
        {
            Run.Cancel();
        }
        else
        {
            Start();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => Run.Dispose();

    /// <summary>
    /// How far the end is, by the blocks left or by the run before, which knows of the rare-event answers sought after the last block.
    /// </summary>
    private static TimeSpan Left(RiskState state, TimeSpan elapsed, TimeSpan before)
    {
        TimeSpan blocks = elapsed * ((double)(state.EndBlock - state.NextBlock) / (state.NextBlock - state.FirstBlock));
        return blocks > before - elapsed ? blocks : before - elapsed;
    }

    private static ImmutableArray<double> PictureKm(LifeModel model) =>
    [
        .. Enumerable.Range(0, CurvePoints).Select(i =>
            model.Scenario.RequiredKm * Math.Pow(CurveReach, (2.0 * i / (CurvePoints - 1)) - 1)),
    ];
}
