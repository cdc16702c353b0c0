using AxleRisk.Files.Toml;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace AxleRisk.Files.Writing;

/// <summary>The places of a text, found by their paths. Offsets of the syntax are those of the text's characters.</summary>
internal sealed class Outline
{
    private Outline(string text, DocumentSyntax document)
    {
        Text = text;
        Headers = [.. document.Tables];
        Root = OutlineBuilder.Build(document);
    }

    public string Text { get; }

    /// <summary>All headers in the order of the file.</summary>
    public IReadOnlyList<TableSyntaxBase> Headers { get; }

    public TablePlace Root { get; }

    /// <summary>The places of a text.</summary>
    /// <exception cref="EditException">The syntax of the text is broken.</exception>
    public static Outline Of(string text)
    {
        if (TomlTree.Parse(text, new ErrorLog("")) is null)
        {
            throw new EditException("the syntax of the file is broken: mend it in a text editor first");
        }

        return new Outline(text, SyntaxParser.Parse(text, validate: false));
    }

    /// <summary>The place of a path; null where there is nothing.</summary>
    public Place? Find(TomlPath path)
    {
        Place? place = Root;
        foreach (PathPart part in path.Parts)
        {
            place = (place, part.Key) switch
            {
                (TablePlace table, string key) => table.Children.GetValueOrDefault(key),
                (ArrayPlace array, null) => array.Items.ElementAtOrDefault(part.Index),
                (ArrayPlace array, string name) => array.Items.Find(i => NameOf(i) == name),
                _ => null,
            };
        }

        return place;
    }

    private static string? NameOf(Place item) =>
        item is TablePlace table && table.Children.GetValueOrDefault("name") is ValuePlace { Syntax: StringValueSyntax text }
            ? text.Value : null;
}
