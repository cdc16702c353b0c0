using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Screens.Live;

/// <summary>
/// The scenario that is open and the answer that follows it: every edit raises the edition and starts the risk study anew,
/// so that a failure probability is there within a moment and grows surer while nothing changes.
/// </summary>
internal sealed class Session : IDisposable
{
    /// <summary>Opens a scenario; the risk study starts at once.</summary>
    /// <param name="document">The scenario.</param>
    /// <param name="clock">The clock, for elapsed times only.</param>
    /// <param name="riskEvaluations">Evaluations of the risk study that follows every edit.</param>
    public Session(ScenarioDocument document, TimeProvider clock, long riskEvaluations = RiskAnalysis.DefaultEvaluations)
    {
        Clock = clock;
        Document = document;
        Model = new LifeModel(document.Scenario);
        Risk = new LiveRisk(this);
        Risk.Start(riskEvaluations);
    }

    /// <summary>The clock, for elapsed times only.</summary>
    public TimeProvider Clock { get; }

    /// <summary>The scenario as it stands.</summary>
    public ScenarioDocument Document { get; private set; }

    /// <summary>The scenario made ready to run.</summary>
    public LifeModel Model { get; private set; }

    /// <summary>Counts the edits: a result of an earlier edition is out of date.</summary>
    public int Edition { get; private set; }

    /// <summary>The seed of every study of this session.</summary>
    public ulong Seed { get; set; } = StudySettings.DefaultSeed;

    /// <summary>The risk study that follows every edit.</summary>
    public LiveRisk Risk { get; }

    /// <summary>Takes the scenario after an edit.</summary>
    /// <exception cref="Core.Distributions.DistributionException">The rank correlations are impossible together; nothing was changed.</exception>
    public void Edited(ScenarioDocument document)
    {
        Model = new LifeModel(document.Scenario);
        Document = document;
        Edition++;
        Risk.Start();
    }

    /// <inheritdoc/>
    public void Dispose() => Risk.Dispose();
}
