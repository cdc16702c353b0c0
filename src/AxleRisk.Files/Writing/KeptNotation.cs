namespace AxleRisk.Files.Writing;

/// <summary>Writes a value in the manner of the one it replaces.</summary>
internal static class KeptNotation
{
    /// <summary>The new value as TOML; the numbers that stay keep their text, the others as many decimals as the old ones had.</summary>
    public static string Of(TomlValue old, TomlValue value) => (old, value) switch
    {
        (TomlValue.Number { Literal: string literal } was, TomlValue.Number now) when was.Equals(now) => literal,
        (TomlValue.Number { Literal: string literal }, TomlValue.Number { Literal: null } now) =>
            TomlText.InTheMannerOf(literal, now.Value),
        (TomlValue.List was, TomlValue.List now) when was.Items.Length == now.Items.Length =>
            new TomlValue.List([.. was.Items.Zip(now.Items, Kept)]).Write(),
        (TomlValue.Table was, TomlValue.Table now) =>
            new TomlValue.Table([.. now.Items.Select(i => was[i.Key] is TomlValue v ? i with { Value = Kept(v, i.Value) } : i)]).Write(),
        _ => value.Write(),
    };

    // A literal that is given goes before the manner of the old one.
    private static TomlValue Kept(TomlValue old, TomlValue value) =>
        value is TomlValue.Number number ? number with { Literal = Of(old, value) } : old.Equals(value) ? old : value;
}
