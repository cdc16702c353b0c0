using AxleRisk.App.Screens.Live;

namespace AxleRisk.App.Screens.Shell;

/// <summary>Keeps changes not saved beside the scenario's file, some time after they were made.</summary>
/// <param name="clock">The clock, for elapsed times only.</param>
internal sealed class Keeper(TimeProvider clock)
{
    /// <summary>No more often than this.</summary>
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(2);

    private int keptEdition;
    private long keptAt;

    /// <summary>A scenario was opened: there is nothing to keep yet.</summary>
    public void Begin(Session session) => keptEdition = session.Edition;

    /// <summary>Keeps what has changed since the last time, if that is long enough ago.</summary>
    /// <param name="session">The open scenario.</param>
    /// <param name="atOnce">Whether to do so however short ago that is.</param>
    /// <returns>Why it could not be kept, for the reader; null where there is nothing to tell.</returns>
    public string? Keep(Session session, bool atOnce)
    {
        if (session.Edition == keptEdition || (!atOnce && clock.GetElapsedTime(keptAt) < Pause))
        {
            return null;
        }

        keptEdition = session.Edition;
        keptAt = clock.GetTimestamp();
        return session.Edited.KeepUnsaved() is { } trouble ? $"Changes cannot be kept beside the file: {trouble}" : null;
    }
}
