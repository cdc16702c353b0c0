namespace AxleRisk.App.Screens.Editing;

/// <summary>Whether a scenario was saved.</summary>
internal enum SaveResult
{
    /// <summary>It was.</summary>
    Saved,

    /// <summary>Not: another program has changed the file since it was read, or it is there already under a new name.</summary>
    WouldOverwrite,

    /// <summary>Not: the file is marked as not to be written.</summary>
    Protected,

    /// <summary>Not: the file is no longer there.</summary>
    Gone,

    /// <summary>Not: another console has the file open.</summary>
    Held,

    /// <summary>Not: the reason says why.</summary>
    Failed,
}

/// <summary>The result of saving.</summary>
/// <param name="Result">Whether it was saved.</param>
/// <param name="Reason">Why not; empty where it was.</param>
internal sealed record SaveOutcome(SaveResult Result, string Reason = "");
