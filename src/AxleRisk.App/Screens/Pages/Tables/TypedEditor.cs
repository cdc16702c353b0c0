using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Pages.Inputs;
using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Tables;

/// <summary>A key with one field to type in: a text, a number, or several with blanks between.</summary>
internal sealed class TypedEditor : KeyEditor
{
    private static readonly char[] Between = [',', ' ', ';', '\t'];

    /// <summary>Creates the field.</summary>
    /// <param name="key">The key.</param>
    /// <param name="stated">What the file states; null for nothing.</param>
    public TypedEditor(KeyFormat key, TomlValue? stated)
        : base(key) =>
        Fields = [Field(stated is null ? "" : FieldValues.Show(stated), isNumber: IsNumber)];

    public override bool IsEmpty => Text.Length == 0;

    public override TomlValue? Value => IsEmpty ? null : Key.Kind switch
    {
        KeyKind.Number or KeyKind.Whole => Number(Text),
        KeyKind.Numbers => List(Number),
        KeyKind.SomeWords or KeyKind.Texts => List(TomlValue.Of),
        _ => TomlValue.Of(Text),
    };

    public override string MustBe => base.MustBe
        + (Key.Kind is KeyKind.Numbers or KeyKind.SomeWords or KeyKind.Texts ? ", with blanks between" : "");

    private string Text => Fields[0].Text.Trim();

    private bool IsNumber => Key.Kind is KeyKind.Number or KeyKind.Whole or KeyKind.Numbers;

    public override void Clear() => Fields[0].Text = "";

    private static TomlValue.Number? Number(string text) =>
        InputEditor.Number(text) is { } number ? new TomlValue.Number(number, text) : null;

    private TomlValue.List? List(Func<string, TomlValue?> one)
    {
        TomlValue?[] items = [.. Text.Split(Between, StringSplitOptions.RemoveEmptyEntries).Select(one)];
        return items.Contains(null) ? null : TomlValue.ListOf(items.OfType<TomlValue>());
    }
}
