namespace AxleRisk.App.Text;

/// <summary>What a line of an answer is.</summary>
internal enum LineKind
{
    /// <summary>Running text, lists, tables.</summary>
    Plain,

    /// <summary>A heading.</summary>
    Heading,

    /// <summary>What must not be overlooked.</summary>
    Warning,
}

/// <summary>One line of an answer, not yet looking like anything.</summary>
/// <param name="Text">Its text, without control characters.</param>
/// <param name="Kind">What it is.</param>
internal readonly record struct TextLine(string Text, LineKind Kind = LineKind.Plain)
{
    public static implicit operator TextLine(string text) => new(text);

    public static TextLine Empty { get; } = new("");
}
