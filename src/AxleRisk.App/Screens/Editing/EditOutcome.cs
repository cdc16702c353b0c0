namespace AxleRisk.App.Screens.Editing;

/// <summary>Whether an edit was made.</summary>
/// <param name="Reasons">Why it was not, as the reader of scenarios says it; empty where it was.</param>
internal sealed record EditOutcome(IReadOnlyList<string> Reasons)
{
    public static EditOutcome Accepted { get; } = new([]);

    public bool IsAccepted => Reasons.Count == 0;
}
