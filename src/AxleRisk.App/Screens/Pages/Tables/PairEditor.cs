using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Tables;

/// <summary>Two inputs.</summary>
internal sealed class PairEditor : KeyEditor
{
    private readonly IReadOnlyList<Answer> inputs;

    /// <summary>Creates the two fields.</summary>
    /// <param name="key">The key.</param>
    /// <param name="stated">What the file states; null for nothing.</param>
    /// <param name="inputs">The inputs to choose from, two at least.</param>
    public PairEditor(KeyFormat key, TomlValue? stated, IReadOnlyList<Answer> inputs)
        : base(key)
    {
        this.inputs = inputs;
        string[] shown = [.. inputs.Select(i => i.Shown)];
        string At(int place) => (stated as TomlValue.List)?.Items.ElementAtOrDefault(place) is { } value
            && inputs.FirstOrDefault(i => i.Value.Equals(value)) is { } input ? input.Shown : shown[Math.Min(place, shown.Length - 1)];
        Fields = [Field(At(0), shown, "first input"), Field(At(1), shown, "second input")];
    }

    public override bool IsEmpty => false;

    public override TomlValue? Value =>
        TomlValue.ListOf(Fields.Select(f => inputs.First(i => i.Shown == f.Text).Value));

    public override void Clear()
    {
        // There is always a pair.
    }
}
