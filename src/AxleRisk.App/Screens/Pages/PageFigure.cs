namespace AxleRisk.App.Screens.Pages;

/// <summary>The one figure that belongs to a page, for the top line.</summary>
/// <param name="Of">What it is of: <c>fails on the trip</c>.</param>
/// <param name="Figure">The figure, or a word in its place.</param>
/// <param name="Range">Its interval; empty where there is none.</param>
/// <param name="IsInterim">Whether the study behind it is not done, or was ended early.</param>
internal sealed record PageFigure(string Of, string Figure, string Range = "", bool IsInterim = false)
{
    /// <summary>What it is of, where there is little room.</summary>
    public string ShortOf { get; init; } = Of;
}
