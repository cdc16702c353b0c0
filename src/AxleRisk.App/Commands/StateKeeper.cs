using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary>Keeps the state of a study in a file while it runs, often enough that a kill loses little.</summary>
internal sealed class StateKeeper(ScenarioDocument document, string? path, TimeProvider clock)
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(2);
    private long last = clock.GetTimestamp();

    /// <summary>The state in the file; null where there is no file yet.</summary>
    /// <exception cref="StudyException">The file belongs to another scenario or version, or its numbers do not fit together.</exception>
    public RiskState? Read(LifeModel model)
    {
        if (!File.Exists(path))
        {
            return null;
        }

        PartFile file = PartFile.Read(path);
        return file.Digest == document.Digest && file.ModelVersion == LifeModel.Version
            ? file.CheckedState(path, model)
            : throw new StudyException(
                $"{path} holds the state of another scenario or of another version of the model: choose another --out, or leave --resume out");
    }

    /// <summary>
    /// Writes the state, unless it was written a moment ago. Where it cannot be written now, the next time may be luckier.
    /// </summary>
    public void Keep(RiskState state)
    {
        if (clock.GetElapsedTime(last) >= Pause)
        {
            Write(state);
            last = clock.GetTimestamp();
        }
    }

    /// <summary>Writes the state.</summary>
    /// <returns>Why it could not be written, as a sentence; null where it was.</returns>
    public string? Write(RiskState state) => OutputFile.Trouble(
        path!, new PartFile(Path.GetFullPath(document.FileName), document.Digest, Product.Version, LifeModel.Version, state).Write);
}
