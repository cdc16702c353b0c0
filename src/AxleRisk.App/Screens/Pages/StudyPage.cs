using AxleRisk.App.Screens.Live;
using AxleRisk.App.Text;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Pages;

/// <summary>
/// A page whose contents are the result of one study, run in the background when asked for. The study can be stopped,
/// continued and ended early; an edit of the scenario marks the result as out of date.
/// </summary>
/// <typeparam name="T">The result; an immutable record.</typeparam>
internal abstract class StudyPage<T> : Page, IDisposable
    where T : class
{
    /// <summary>Creates the page.</summary>
    /// <param name="session">The open scenario.</param>
    /// <param name="dialogs">Asks for the number of evaluations.</param>
    /// <param name="run">The study in the background; one of the page's own unless given.</param>
    protected StudyPage(Session session, IDialogs dialogs, StudyRun<T>? run = null)
    {
        Session = session;
        Dialogs = dialogs;
        Run = run ?? session.NewRun<T>(() => State);
    }

    /// <inheritdoc/>
    public override IReadOnlyList<KeyHint> Keys => Unavailable is not null ? [] : Run.Standing.Phase switch
    {
        RunPhase.Running => [new("s", "stop", KeyWorth.Main), new("f", "finish now")],
        RunPhase.Stopped => [new("s", "continue", KeyWorth.Main), new("f", "finish now"), new("r", "run again")],
        _ => [new("r", Run.Result is null ? "run" : "run again", KeyWorth.Main), new("e", "evaluations", KeyWorth.Spare)],
    };

    /// <inheritdoc/>
    public override PageLine Status => Unavailable is not null
        ? PageLine.Empty
        : StudyStatus.Line(Run.Standing, Run.Result is not null, IsOutOfDate);

    /// <inheritdoc/>
    public override int Revision => HashCode.Combine(Run.Revision, Run.Standing.Evaluations, Session.Edition);

    /// <inheritdoc/>
    public override int News => Run.News;

    /// <summary>The study in the background.</summary>
    public StudyRun<T> Run { get; }

    /// <summary>Whether the result shown answers an earlier state of the scenario.</summary>
    public bool IsOutOfDate => Run.State != State;

    /// <summary>Evaluations that the next run spends.</summary>
    public long Evaluations => ChosenEvaluations ?? DefaultEvaluations;

    /// <summary>Evaluations that the reader has chosen; null where that was not done.</summary>
    public long? ChosenEvaluations { get; set; }

    protected Session Session { get; }

    /// <summary>What the result depends on: the numbers of the scenario.</summary>
    protected virtual int State => Session.State;

    protected IDialogs Dialogs { get; }

    /// <summary>Why the study cannot be run on this scenario and what would help; null where it can.</summary>
    protected virtual string? Unavailable => null;

    /// <summary>Evaluations where the reader has not chosen a number.</summary>
    protected abstract long DefaultEvaluations { get; }

    /// <summary>Runs the study; called on a thread of its own.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="settings">Evaluations, seed and sampling plan.</param>
    /// <param name="options">Threads, progress, cancellation; to be handed on as they are.</param>
    /// <param name="publish">Takes results so far, if there are any to show.</param>
    protected abstract T Study(LifeModel model, StudySettings settings, RunOptions options, Action<T> publish);

    /// <summary>How many times the damage model is evaluated for these settings: what progress counts to.</summary>
    protected virtual long Requested(StudySettings settings) => settings.Evaluations;

    /// <summary>The result as lines.</summary>
    protected abstract IReadOnlyList<PageLine> Show(T result, int width, int height);

    /// <summary>What stands on the page before there is a result.</summary>
    protected abstract string Invitation { get; }

    /// <summary>The sampling plan.</summary>
    protected virtual string Sampling => Core.Sampling.SamplingPlan.Names[0];

    /// <inheritdoc/>
    public override IReadOnlyList<PageLine> Lines(int width, int height)
    {
        if (Unavailable is { } why)
        {
            return Paragraph(why, width);
        }

        IReadOnlyList<PageLine> lines = Run.Result is { } result ? Show(result, width, height) : Paragraph(Invitation, width);

        // What is out of date is not shown like what is fresh.
        return Run.Result is not null && IsOutOfDate ? [.. lines.Select(l => l.In(Ink.Quiet))] : lines;
    }

    /// <inheritdoc/>
    public override bool Press(PageKey key)
    {
        RunPhase phase = Run.Standing.Phase;
        switch (key.Character)
        {
            case 'r' when Unavailable is null:
                Start();
                return true;
            case 's' when phase == RunPhase.Running:
                Run.Stop();
                return true;
            case 's' when phase == RunPhase.Stopped:
                Run.Continue();
                return true;
            case 'f' when phase is RunPhase.Running or RunPhase.Stopped:
                Run.EndNow();
                return true;
            case 'e' when Unavailable is null && phase is not (RunPhase.Running or RunPhase.Stopped):
                AskEvaluations();
                return true;
            default:
                return false;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Starts the study of the scenario as it stands.</summary>
    public virtual void Start()
    {
        LifeModel model = Session.Model;
        var settings = new StudySettings(Evaluations, Session.Seed, Sampling);
        Run.Start(State, Requested(settings), (options, publish) => Study(model, settings, options, publish));
    }

    /// <summary>Ends what runs in the background.</summary>
    protected virtual void Dispose(bool disposing) => Run.Dispose();

    /// <summary>Lines of a sentence or two.</summary>
    protected static IReadOnlyList<PageLine> Paragraph(string text, int width) =>
        [PageLine.Empty, .. Wrap.Lines(text, Math.Min(width, Layout.Width) - 2, "").Select(l => PageLine.Of("  " + l))];

    /// <summary>The page's figure as far as it is known and answers the scenario as it stands.</summary>
    /// <param name="of">What it is of.</param>
    /// <param name="probability">The figure of a result.</param>
    /// <param name="run">The run behind a result.</param>
    /// <param name="range">What its range is, where that is no interval of sampling.</param>
    protected PageFigure FigureOf(string of, Func<T, Interval> probability, Func<T, RunRecord> run, string range = "") => Run.Result switch
    {
        { } result when !IsOutOfDate => new(of, Figures.Probability(probability(result)),
            Figures.Range(probability(result)).Replace("(", "(" + range, StringComparison.Ordinal),
            Run.IsSnapshot || run(result).IsPartial),
        _ when Run.Standing.Phase is RunPhase.Running or RunPhase.Stopped => new(of, "..."),
        null => new(of, "not run"),
        _ => new(of, "out of date"),
    };

    private void AskEvaluations()
    {
        if (EvaluationsQuestion.Ask(Dialogs, Evaluations) is { } evaluations)
        {
            ChosenEvaluations = evaluations;
            Start();
        }
    }
}
