using Tomlyn.Syntax;

namespace AxleRisk.Files.Writing;

/// <summary>Reads keys and values from the syntax, with the texts of the numbers.</summary>
internal static class SyntaxValues
{
    public static TomlValue Of(ValueSyntax syntax) => syntax switch
    {
        IntegerValueSyntax integer => new TomlValue.Number(integer.Value, integer.Token?.Text),
        FloatValueSyntax number => new TomlValue.Number(number.Value, number.Token?.Text),
        StringValueSyntax text => TomlValue.Of(text.Value ?? ""),
        ArraySyntax array => TomlValue.ListOf(array.Items.Select(i => Of(i.Value!))),
        InlineTableSyntax table => Table(table),
        _ => new TomlValue.Other(syntax.ToString().Trim()),
    };

    /// <summary>The parts of a dotted key.</summary>
    public static List<string> Keys(KeySyntax key) => [Text(key.Key), .. key.DotKeys.Select(d => Text(d.Key))];

    private static TomlValue.Table Table(InlineTableSyntax table)
    {
        TablePlace place = new(null, "", Toml.TableOrigin.Inline);
        OutlineBuilder.Fill(place, table);
        return (TomlValue.Table)place.Value;
    }

    private static string Text(BareKeyOrStringValueSyntax? key) => key switch
    {
        BareKeySyntax bare => bare.Key?.Text ?? "",
        StringValueSyntax quoted => quoted.Value ?? "",
        _ => "",
    };
}
