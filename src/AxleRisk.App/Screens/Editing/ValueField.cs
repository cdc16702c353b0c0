namespace AxleRisk.App.Screens.Editing;

/// <summary>One field of a form, as it is typed.</summary>
/// <param name="Name">Its name: the parameter's name in a scenario file, or <c>value</c>.</param>
/// <param name="Text">What stands in it.</param>
/// <param name="IsOptional">Whether it may be empty.</param>
/// <param name="Hint">What it is, short.</param>
internal sealed record ValueField(string Name, string Text, bool IsOptional, string Hint)
{
    /// <summary>The words to choose from; empty for a field to type in.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];
}
