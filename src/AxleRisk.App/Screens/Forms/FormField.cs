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

    /// <summary>Why that is not right and what would be; null where it is.</summary>
    public string? Refusal { get; set; }
}
