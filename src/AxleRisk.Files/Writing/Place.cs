using AxleRisk.Files.Toml;
using Tomlyn.Syntax;

namespace AxleRisk.Files.Writing;

/// <summary>A place in the text of a scenario, with the syntax that makes it.</summary>
internal abstract class Place
{
    /// <summary>The value as it stands there.</summary>
    public abstract TomlValue Value { get; }

    /// <summary>The pieces of text that make the place, each to be taken out for itself.</summary>
    public abstract IEnumerable<SyntaxNode> Pieces { get; }

    /// <summary>Where the value begins, as the reader says it in errors.</summary>
    public Position? At => this switch
    {
        ValuePlace value => TreeBuilder.PositionOf(value.Syntax.Span),
        TablePlace { Inline: ValuePlace inline } => inline.At,
        ArrayPlace { Inline: ValuePlace inline } => inline.At,
        _ => Pieces.FirstOrDefault() is SyntaxNode first ? TreeBuilder.PositionOf(first.Span) : null,
    };
}

/// <summary>A scalar, a list or an inline table behind a key or in a list.</summary>
/// <param name="syntax">The value.</param>
/// <param name="holder">The key and value, or the item of a list, that holds it.</param>
internal sealed class ValuePlace(ValueSyntax syntax, SyntaxNode holder) : Place
{
    public ValueSyntax Syntax => syntax;

    public override TomlValue Value => SyntaxValues.Of(syntax);

    public override IEnumerable<SyntaxNode> Pieces => [holder];
}

/// <summary>A table that is not inline, or the inside of an inline one.</summary>
internal sealed class TablePlace(TablePlace? parent, string key, TableOrigin origin) : Place
{
    /// <summary>The table in which dotted keys state this one.</summary>
    public TablePlace? Parent => parent;

    /// <summary>The key in the parent.</summary>
    public string Key => key;

    public TableOrigin Origin { get; set; } = origin;

    /// <summary>Its header; null at the top of the file and where there is none.</summary>
    public TableSyntaxBase? Header { get; set; }

    /// <summary>The inline table that this is the inside of.</summary>
    public ValuePlace? Inline { get; init; }

    /// <summary>The keys and values under its header, in its braces, or at the top of the file, those of dotted keys included.</summary>
    public List<KeyValueSyntax> Pairs { get; } = [];

    /// <summary>The pairs that state it by dotted keys.</summary>
    public List<KeyValueSyntax> DottedPairs { get; } = [];

    public Dictionary<string, Place> Children { get; } = [];

    public override TomlValue Value => TomlValue.TableOf(Children.Select(c => (c.Key, c.Value.Value)));

    public override IEnumerable<SyntaxNode> Pieces =>
        Inline is not null ? Inline.Pieces
        : Origin == TableOrigin.Dotted ? DottedPairs
        : (Header is null ? [] : new SyntaxNode[] { Header }).Concat(Children.Values.Where(IsUnderHeaders).SelectMany(c => c.Pieces));

    // A value or a dotted table of a headed table goes with its header.
    private static bool IsUnderHeaders(Place child) => child is ArrayPlace { Inline: null } or TablePlace
    { Inline: null, Origin: not TableOrigin.Dotted };
}

/// <summary>An array of tables under headers, or a list whose items are inline tables.</summary>
internal sealed class ArrayPlace : Place
{
    /// <summary>The list, where the tables stand inline in one.</summary>
    public ValuePlace? Inline { get; init; }

    public List<Place> Items { get; } = [];

    public override TomlValue Value => TomlValue.ListOf(Items.Select(i => i.Value));

    public override IEnumerable<SyntaxNode> Pieces => Inline is not null ? Inline.Pieces : Items.SelectMany(i => i.Pieces);
}
