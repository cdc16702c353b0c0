namespace AxleRisk.App.Screens.Forms;

/// <summary>One field of a form.</summary>
/// <param name="label">What it is called.</param>
/// <param name="text">What stands in it at first.</param>
/// <param name="unit">Its unit or a remark behind it.</param>
/// <param name="choices">What can be chosen; null for a field to type in.</param>
internal sealed class FormField(string label, string text, string unit = "", IReadOnlyList<string>? choices = null)
{
    public string Label => label;

    public string Unit => unit;

    public IReadOnlyList<string>? Choices => choices;

    /// <summary>What stands in it now.</summary>
    public string Text { get; set; } = text;

    /// <summary>Whether the reader has typed or chosen something in it.</summary>
    public bool IsTouched { get; set; }

    /// <summary>Whether a number, or what a form of its own makes, is typed in it.</summary>
    public bool IsNumber { get; init; }

    /// <summary>What it is and what may stand in it; empty where its label says all.</summary>
    public string Help { get; init; } = "";

    /// <summary>Why that is not right and what would be; null where it is.</summary>
    public string? Refusal { get; set; }
}
