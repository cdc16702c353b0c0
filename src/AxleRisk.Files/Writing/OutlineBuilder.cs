using AxleRisk.Files.Toml;
using Tomlyn.Syntax;

namespace AxleRisk.Files.Writing;

/// <summary>Builds the tree of places of a text whose tables <see cref="TreeBuilder"/> has found to be sound.</summary>
internal static class OutlineBuilder
{
    public static TablePlace Build(DocumentSyntax document)
    {
        TablePlace root = new(null, "", TableOrigin.Header);
        foreach (KeyValueSyntax pair in document.KeyValues)
        {
            Add(root, pair);
        }

        foreach (TableSyntaxBase header in document.Tables)
        {
            TablePlace table = Open(root, header);
            foreach (KeyValueSyntax pair in header.Items)
            {
                Add(table, pair);
            }
        }

        return root;
    }

    /// <summary>Adds the keys of an inline table to the table that stands for its inside.</summary>
    public static void Fill(TablePlace table, InlineTableSyntax inline)
    {
        foreach (InlineTableItemSyntax item in inline.Items)
        {
            Add(table, item.KeyValue!);
        }
    }

    private static TablePlace Open(TablePlace root, TableSyntaxBase header)
    {
        List<string> path = SyntaxValues.Keys(header.Name!);
        TablePlace parent = root;
        foreach (string key in path.Take(path.Count - 1))
        {
            parent = Inner(parent, key, TableOrigin.Implied);
        }

        string last = path[^1];
        if (header is not TableArraySyntax)
        {
            TablePlace table = Inner(parent, last, TableOrigin.Header);
            (table.Header, table.Origin) = (header, TableOrigin.Header);
            return table;
        }

        if (!parent.Children.TryGetValue(last, out Place? there))
        {
            parent.Children.Add(last, there = new ArrayPlace());
        }

        TablePlace opened = new(parent, last, TableOrigin.Header) { Header = header };
        ((ArrayPlace)there).Items.Add(opened);
        return opened;
    }

    private static void Add(TablePlace table, KeyValueSyntax pair)
    {
        table.Pairs.Add(pair);
        List<string> path = SyntaxValues.Keys(pair.Key!);
        foreach (string key in path.Take(path.Count - 1))
        {
            table = Inner(table, key, TableOrigin.Dotted);
            table.DottedPairs.Add(pair);
        }

        table.Children[path[^1]] = Of(pair.Value!, pair, table, path[^1]);
    }

    private static Place Of(ValueSyntax value, SyntaxNode holder, TablePlace parent, string key)
    {
        ValuePlace place = new(value, holder);
        switch (value)
        {
            case InlineTableSyntax inline:
                TablePlace table = new(parent, key, TableOrigin.Inline) { Inline = place };
                Fill(table, inline);
                return table;
            case ArraySyntax array:
                ArrayPlace items = new() { Inline = place };
                items.Items.AddRange(array.Items.Select(i => Of(i.Value!, i, parent, key)));
                return items;
            default:
                return place;
        }
    }

    private static TablePlace Inner(TablePlace parent, string key, TableOrigin origin)
    {
        switch (parent.Children.GetValueOrDefault(key))
        {
            case TablePlace table:
                return table;
            case ArrayPlace { Items: [.., TablePlace last] }:
                return last;
            default:
                TablePlace made = new(parent, key, origin);
                parent.Children[key] = made;
                return made;
        }
    }
}
