using AxleRisk.App.Screens.Editing;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Shell;

/// <summary>
/// Keeps changes not saved beside the scenario's file, a moment after they were made, and watches that file: another program may
/// change it, another console have it, or what was kept vanish.
/// </summary>
/// <param name="clock">The clock, for elapsed times only.</param>
internal sealed class Keeper(TimeProvider clock)
{
    /// <summary>No more often than this.</summary>
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);

    private int keptEdition;
    private long at;
    private string? trouble;

    /// <summary>A scenario was opened: there is nothing to keep yet.</summary>
    public void Begin(EditedScenario edited) => (keptEdition, trouble) = (edited.Edition, null);

    /// <summary>Keeps what has changed since the last time and looks at the file, if that is long enough ago.</summary>
    /// <param name="edited">The open scenario.</param>
    /// <param name="atOnce">Whether to do so however short ago that is.</param>
    /// <returns>What has happened, for the reader; null where there is nothing to tell.</returns>
    public string? Keep(EditedScenario edited, bool atOnce)
    {
        if (!atOnce && clock.GetElapsedTime(at) < Pause)
        {
            return null;
        }

        at = clock.GetTimestamp();
        return Look(edited) ?? Keep(edited);
    }

    private static string? Look(EditedScenario edited)
    {
        ScenarioFile file = edited.File;
        (DiskState disk, OpenMark.Holder? holder) = (file.Disk, file.Holder);
        file.Look();
        return (holder, file.Holder) switch
        {
            (null, { } taken) => $"Now open in another console ({taken}): nothing can be changed here.",
            ({ }, null) => file.Recovered is null ? "The other console has left the file: it can be changed here now."
                : "The other console ended and left changes not saved: o opens it anew.",
            _ => file.Disk == disk ? null : Differences.Notice(edited) is { Length: > 0 } notice ? notice : "The file is as it was again.",
        };
    }

    private string? Keep(EditedScenario edited)
    {
        if (edited.Edition == keptEdition && !(edited.IsUnsaved && !edited.File.IsKept))
        {
            return null;
        }

        keptEdition = edited.Edition;
        string? before = trouble;
        trouble = edited.KeepUnsaved();
        return trouble is null || trouble == before ? null : $"Changes cannot be kept beside the file: {trouble}";
    }
}
