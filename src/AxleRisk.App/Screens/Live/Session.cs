using AxleRisk.App.Screens.Editing;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Live;

/// <summary>
/// The scenario that is open and the answer that follows it: every edit starts the risk study anew, so that a failure
/// probability is there within a moment and grows surer while nothing changes.
/// </summary>
internal sealed class Session : IDisposable
{
    private readonly Dictionary<string, int> states = [];
    private readonly Action? wake;

    /// <summary>Opens a scenario; the risk study starts at once.</summary>
    /// <param name="edited">The scenario under edit, valid.</param>
    /// <param name="clock">The clock, for elapsed times only.</param>
    /// <param name="riskEvaluations">Evaluations of the risk study that follows every edit.</param>
    /// <param name="wake">Called, on any thread, when a study has an answer or has ended.</param>
    public Session(EditedScenario edited, TimeProvider clock, long riskEvaluations = RiskAnalysis.DefaultEvaluations, Action? wake = null)
    {
        this.wake = wake;
        Clock = clock;
        Edited = edited;
        Document = edited.Document ?? throw new ScenarioException(edited.Errors);
        Model = new LifeModel(Document.Scenario);
        State = StateOf(Document);
        Risk = new LiveRisk(this);
        Risk.Start(riskEvaluations);
    }

    /// <summary>The clock, for elapsed times only.</summary>
    public TimeProvider Clock { get; }

    /// <summary>The scenario under edit: its text, undo, saving. To change it, use <see cref="Apply"/>.</summary>
    public EditedScenario Edited { get; }

    /// <summary>The scenario as it stands.</summary>
    public ScenarioDocument Document { get; private set; }

    /// <summary>The scenario made ready to run.</summary>
    public LifeModel Model { get; private set; }

    /// <summary>Changes with every edit of the text.</summary>
    public int Edition => Edited.Edition;

    /// <summary>
    /// Stands for the numbers of the scenario: a result of another state is out of date. Back where they were it is what it was
    /// then; an edit of the title or of a comment leaves it.
    /// </summary>
    public int State { get; private set; }

    /// <summary>The seed of every study of this session.</summary>
    public ulong Seed { get; set; } = StudySettings.DefaultSeed;

    /// <summary>The risk study that follows every edit.</summary>
    public LiveRisk Risk { get; }

    /// <summary>What every change is compared with; null where nothing is pinned.</summary>
    public Baseline? Baseline { get; private set; }

    /// <summary>A study of this scenario, not started.</summary>
    /// <param name="present">The state that its result depends on.</param>
    public StudyRun<T> NewRun<T>(Func<int> present)
        where T : class => new(Clock, present, wake);

    /// <summary>Pins the scenario as it stands, or lets go of the one that is pinned.</summary>
    /// <returns>Whether one is pinned now.</returns>
    public bool Pin()
    {
        Baseline?.Dispose();
        Baseline = Baseline is null ? new Baseline(this) : null;
        return Baseline is not null;
    }

    /// <summary>Makes an edit, or says why it cannot be made; then nothing changes.</summary>
    public EditOutcome Apply(ScenarioEdit edit)
    {
        EditOutcome outcome = Edited.Apply(edit);
        Follow();
        return outcome;
    }

    /// <summary>Why an edit cannot be made; null where it can. Nothing is changed.</summary>
    public string? WhyNot(ScenarioEdit edit)
    {
        if (Edited.WhyOnlyLook is { } why)
        {
            return why;
        }

        try
        {
            return Edited.Try(edit).Errors is [var first, ..] ? first.Message : null;
        }
        catch (EditException e)
        {
            return e.Message;
        }
    }

    /// <summary>Takes the last edit back.</summary>
    /// <returns>Its name; null where there is none.</returns>
    public string? Undo()
    {
        string? name = Edited.Undo();
        Follow();
        return name;
    }

    /// <summary>Makes the edit taken back last again.</summary>
    /// <returns>Its name; null where there is none.</returns>
    public string? Redo()
    {
        string? name = Edited.Redo();
        Follow();
        return name;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Risk.Dispose();
        Baseline?.Dispose();
    }

    /// <summary>Goes on with the text as it now is.</summary>
    public void Follow()
    {
        // A text that is no scenario (recovered, say) has no answer; the last good one stays until it is mended.
        if (Edited.Document is { } document && document != Document)
        {
            bool isAnother = document.Digest != Document.Digest;
            int before = State;
            Document = document;
            State = StateOf(document);
            Model = isAnother ? new LifeModel(document.Scenario) : Model;
            if (State != before)
            {
                Risk.Follow();
                Baseline?.Follow();
            }
        }
    }

    private int StateOf(ScenarioDocument document)
    {
        string key = ScenarioNumbers.KeyOf(Edited.Text, document);
        if (!states.TryGetValue(key, out int state))
        {
            state = states.Count;
            states.Add(key, state);
        }

        return state;
    }
}
