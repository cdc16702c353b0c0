namespace AxleRisk.App.Screens.Pages.Inputs;

/// <summary>What a panel made of a key.</summary>
/// <param name="IsKnown">Whether it knew the key.</param>
/// <param name="IsDone">Whether it is to be left.</param>
/// <param name="Refusal">Why what was asked cannot be; null where it can.</param>
internal readonly record struct PanelAnswer(bool IsKnown, bool IsDone = false, string? Refusal = null);

/// <summary>Something that takes the place of the list of inputs for a while.</summary>
internal abstract class Panel
{
    public abstract IReadOnlyList<KeyHint> Keys { get; }

    public abstract string Status { get; }

    public abstract IReadOnlyList<PageLine> Lines(int width, int height);

    public abstract PanelAnswer Press(PageKey key);
}
