namespace AxleRisk.App.Screens.Editing;

/// <summary>Whether an edit was made.</summary>
/// <param name="Reasons">Why it was not, as the reader of scenarios says it; empty where it was.</param>
internal sealed record EditOutcome(IReadOnlyList<string> Reasons)
{
    public static EditOutcome Accepted { get; } = new([]);

    public bool IsAccepted => Reasons.Count == 0;
}

/// <summary>Whether a scenario was saved.</summary>
internal enum SaveResult
{
    /// <summary>It was.</summary>
    Saved,

    /// <summary>Not: another program has changed the file since it was read, or it is there already under a new name.</summary>
    WouldOverwrite,

    /// <summary>Not: the reason says why.</summary>
    Failed,
}

/// <summary>The result of saving.</summary>
/// <param name="Result">Whether it was saved.</param>
/// <param name="Reason">Why not; empty where it was.</param>
internal sealed record SaveOutcome(SaveResult Result, string Reason = "");
