using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Text;
using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Tables;

/// <summary>The fields of one key of a table, and the value of the file that they state.</summary>
/// <param name="key">The key as it is described.</param>
internal abstract class KeyEditor(KeyFormat key)
{
    /// <summary>The key.</summary>
    public KeyFormat Key => key;

    /// <summary>Its fields, from top to bottom.</summary>
    public IReadOnlyList<FormField> Fields { get; protected set; } = [];

    /// <summary>Whether nothing is stated.</summary>
    public abstract bool IsEmpty { get; }

    /// <summary>The value for the file; null where nothing is stated or what is typed is no value.</summary>
    public abstract TomlValue? Value { get; }

    /// <summary>What would be right where what is typed is no value.</summary>
    public virtual string MustBe => Plain(key.Kind.MustBe);

    /// <summary>What a form of its own for a field would be; empty where there is none.</summary>
    public virtual string Opens => "";

    /// <summary>States nothing.</summary>
    public abstract void Clear();

    /// <summary>Opens a form of its own for a field.</summary>
    /// <returns>Whether there is one.</returns>
    public virtual bool Open(FormField field, IDialogs dialogs) => false;

    /// <summary>A field has another text.</summary>
    /// <returns>Whether other fields are there now.</returns>
    public virtual bool Changed(FormField field) => false;

    /// <summary>A picture of what a field states, below its explanation.</summary>
    public virtual IReadOnlyList<PageLine> Picture(FormField field, int width, int height) => [];

    /// <summary>What the key is, in plain words.</summary>
    protected string Help => string.Join(' ',
    [
        $"{Printable.Capital(Plain(key.Meaning))}.",
        $"May be: {MustBe}{(key.Unit.Length > 0 ? $", in {key.Unit}" : "")}.",
        key.IsRequired && key.BelongsTo is null && key.Unless is null ? "It must be stated."
            : key.IsRequired ? Printable.Capital(Plain(key.Standard)) + "."
            : key.Otherwise == "none" ? "It may be left empty." : $"Where it is empty: {Plain(key.Otherwise)}.",
        .. key.Needs is { } needed ? new[] { $"It needs {needed}." } : [],
        $"In the file: {key.Key}.",
    ]);

    /// <summary>A field with the explanation of the key.</summary>
    protected FormField Field(string text, IReadOnlyList<string>? choices = null, string? label = null, bool isNumber = false) =>
        new(label ?? key.Label, text, key.Unit, choices) { Help = Help, IsNumber = isNumber };

    /// <summary>Words without the marks of the reference.</summary>
    private static string Plain(string words) => words.Replace("`\"", "").Replace("\"`", "").Replace("`", "");
}
