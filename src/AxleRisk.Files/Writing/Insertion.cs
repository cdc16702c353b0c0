using AxleRisk.Files.Toml;
using Tomlyn.Syntax;

namespace AxleRisk.Files.Writing;

/// <summary>Puts new keys and tables into a scenario's text, each where a reader would look for it.</summary>
internal static class Insertion
{
    /// <summary>A key and its value in a table that is there.</summary>
    public static Splice Key(Outline outline, TablePlace table, string section, string key, string value) => table switch
    {
        { Inline: ValuePlace inline } => IntoInline((InlineTableSyntax)inline.Syntax, $"{key} = {value}"),
        { Origin: TableOrigin.Dotted, Parent: TablePlace parent } =>
            Key(outline, parent, section, $"{TomlText.Key(table.Key)}.{key}", value),
        { Origin: TableOrigin.Implied } => Header(outline, section, $"[{section}]", [$"{key} = {value}"]),
        _ => Line(outline.Text, table, section, key, value),
    };

    /// <summary>A table under a new header, before the sections that come after it.</summary>
    public static Splice Header(Outline outline, string section, string header, IEnumerable<string> lines)
    {
        string text = outline.Text;
        string newLine = TextLines.NewLine(text);
        string block = string.Concat(lines.Prepend(header).Select(l => l + newLine));
        int rank = Sections.Rank(section);
        TableSyntaxBase? next = outline.Headers.FirstOrDefault(h =>
            string.Join('.', SyntaxValues.Keys(h.Name!)) is string other
                && (other.StartsWith(section + ".", StringComparison.Ordinal) || Sections.Rank(other) > rank));
        if (next is null)
        {
            return new Splice(text.Length, text.Length, Ended(text, text.Length, newLine) + (text.Length > 0 ? newLine : "") + block);
        }

        int at = TextLines.StartOfComments(text, TextLines.Start(text, next.Span.Start.Offset));
        return new Splice(at, at, block + newLine);
    }

    /// <summary>A table at the end of an array of tables.</summary>
    public static Splice Element(Outline outline, ArrayPlace array, string section, TomlValue.Table table)
    {
        if (array.Inline is { Syntax: ArraySyntax list })
        {
            return Between(list.Items.LastOrDefault() is { } item ? (item.Value!, item.Comma) : null, list.OpenBracket!, table.Write());
        }

        string text = outline.Text;
        string newLine = TextLines.NewLine(text);
        int at = array.Items[^1].Pieces.OfType<TableSyntaxBase>().Max(h => Removal.EndOfBlock(text, h));
        string block = string.Concat(Lines(table).Prepend($"[[{section}]]").Select(l => l + newLine));
        return new Splice(at, at, Ended(text, at, newLine) + newLine + block);
    }

    /// <summary>The keys of a table, a line each.</summary>
    public static IEnumerable<string> Lines(TomlValue.Table table) => table.Items.Select(i => $"{TomlText.Key(i.Key)} = {i.Value.Write()}");

    private static Splice Line(string text, TablePlace table, string section, string key, string value)
    {
        string newLine = TextLines.NewLine(text);
        int rank = Sections.Rank(section, key);
        KeyValueSyntax? after = table.Pairs.LastOrDefault(p => Sections.Rank(section, SyntaxValues.Keys(p.Key!)[0]) <= rank);
        int at;
        string indent = "";
        if (after is not null)
        {
            at = TextLines.End(text, after.Value!.Span.End.Offset);
            indent = TextLines.Indent(text, TextLines.Start(text, after.Key!.Span.Start.Offset));
        }
        else if (table.Header is TableSyntaxBase header)
        {
            at = TextLines.End(text, header.CloseBracket!.Span.End.Offset);
        }
        else
        {
            at = table.Pairs.Count > 0 ? TextLines.StartOfComments(text, TextLines.Start(text, table.Pairs[0].Span.Start.Offset)) : 0;
        }

        return new Splice(at, at, $"{Ended(text, at, newLine)}{indent}{key} = {value}{newLine}");
    }

    private static Splice IntoInline(InlineTableSyntax table, string item) =>
        Between(table.Items.LastOrDefault() is { } last ? (last.KeyValue!.Value!, last.Comma) : null, table.OpenBrace!, item);

    private static Splice Between((ValueSyntax Value, SyntaxToken? Comma)? last, SyntaxToken open, string item)
    {
        // A comma at the end stays at the end.
        int at = (last?.Value.Span ?? open.Span).End.Offset + 1;
        string text = last is null ? item : ", " + item;
        return last is null && open.TokenKind == TokenKind.OpenBrace ? new Splice(at, at, $" {item} ") : new Splice(at, at, text);
    }

    private static string Ended(string text, int at, string newLine) => at == 0 || text[at - 1] == '\n' ? "" : newLine;
}
