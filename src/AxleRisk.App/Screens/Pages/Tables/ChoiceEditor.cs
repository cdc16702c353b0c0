using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Tables;

/// <summary>One of a few answers: what is shown, and what the file states for it.</summary>
/// <param name="Shown">What is shown.</param>
/// <param name="Value">The value.</param>
internal sealed record Answer(string Shown, TomlValue Value);

/// <summary>A key that is chosen from a few answers.</summary>
internal sealed class ChoiceEditor : KeyEditor
{
    private const string Nothing = "-";

    private readonly IReadOnlyList<Answer> answers;

    /// <summary>Creates the field.</summary>
    /// <param name="key">The key.</param>
    /// <param name="stated">What the file states; null for nothing.</param>
    /// <param name="answers">What can be chosen.</param>
    public ChoiceEditor(KeyFormat key, TomlValue? stated, IReadOnlyList<Answer> answers)
        : base(key)
    {
        // What the file states stays, also where it is none of the usual answers.
        this.answers = stated is null || answers.Any(a => a.Value.Equals(stated)) ? answers : [.. answers, new(Short(stated), stated)];
        string shown = stated is null ? key.IsRequired && answers.Count > 0 ? answers[0].Shown : Nothing
            : this.answers.First(a => a.Value.Equals(stated)).Shown;
        Fields = [Field(shown, [.. key.IsRequired && answers.Count > 0 ? [] : new[] { Nothing }, .. this.answers.Select(a => a.Shown)])];
    }

    public override bool IsEmpty => Value is null;

    public override TomlValue? Value => answers.FirstOrDefault(a => a.Shown == Fields[0].Text)?.Value;

    public override void Clear() => Fields[0].Text = Nothing;

    private static string Short(TomlValue value) => value is TomlValue.Text text ? text.Value : "as in the file";
}
