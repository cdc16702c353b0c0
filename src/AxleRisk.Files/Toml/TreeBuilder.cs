using Tomlyn.Syntax;

namespace AxleRisk.Files.Toml;

/// <summary>Syntax to tables by the rules of TOML: what is defined twice or added to where it must not be is an error.</summary>
internal sealed class TreeBuilder(ErrorLog errors)
{
    /// <summary>No key of a scenario has more parts; longer ones would only cost time.</summary>
    private const int MostParts = 16;

    public TomlTable Build(DocumentSyntax document)
    {
        TomlTable root = new(Position.Start, TableOrigin.Header);
        foreach (KeyValueSyntax pair in document.KeyValues)
        {
            Add(root, pair);
        }

        foreach (TableSyntaxBase header in document.Tables)
        {
            TomlTable table = Open(root, header);
            foreach (KeyValueSyntax pair in header.Items)
            {
                Add(table, pair);
            }
        }

        return root;
    }

    public static Position PositionOf(SourceSpan span) => new(span.Start.Line + 1, span.Start.Column + 1);

    /// <summary>The table that a header opens. After an error it is one that belongs to nothing, so that its keys are still read.</summary>
    private TomlTable Open(TomlTable root, TableSyntaxBase header)
    {
        Position at = PositionOf(header.Span);
        TomlTable opened = new(at, TableOrigin.Header);
        List<string> path = PathOf(header.Name!);
        if (Descend(root, path, at, TableOrigin.Implied) is not TomlTable parent)
        {
            return opened;
        }

        string key = path[^1];
        bool isOfArray = header is TableArraySyntax;
        switch (parent.Find(key)?.Node)
        {
            case null when isOfArray:
                TomlArray first = new(at, isOfTables: true);
                first.Items.Add(opened);
                parent.Add(new TomlEntry(key, at, first));
                return opened;
            case null:
                parent.Add(new TomlEntry(key, at, opened));
                return opened;
            case TomlArray { IsOfTables: true } array when isOfArray:
                array.Items.Add(opened);
                return opened;
            case TomlTable { Origin: TableOrigin.Implied } when !isOfArray:
                return parent.GiveHeader(key, at);
            default:
                Taken(parent, path, at);
                return opened;
        }
    }

    private void Add(TomlTable table, KeyValueSyntax pair)
    {
        Position at = PositionOf(pair.Key!.Span);
        List<string> path = PathOf(pair.Key);
        TomlNode value = Convert(pair.Value!);
        if (Descend(table, path, at, TableOrigin.Dotted) is not TomlTable parent)
        {
            return;
        }

        if (parent.Find(path[^1]) is null)
        {
            parent.Add(new TomlEntry(path[^1], at, value));
        }
        else
        {
            Taken(parent, path, at);
        }
    }

    /// <summary>The table that holds the last key of a path, made where it is not there; null after an error.</summary>
    private TomlTable? Descend(TomlTable table, List<string> path, Position at, TableOrigin origin)
    {
        if (path.Count > MostParts)
        {
            errors.Add(at, $"a key has at most {MostParts} parts, not {path.Count}");
            return null;
        }

        for (int i = 0; i < path.Count - 1; i++)
        {
            switch (table.Find(path[i])?.Node)
            {
                case TomlTable inner when inner.Origin == origin || (origin == TableOrigin.Implied && inner.Origin != TableOrigin.Inline):
                    table = inner;
                    break;
                case TomlArray { IsOfTables: true, Items: [.., TomlTable last] } when origin == TableOrigin.Implied:
                    table = last;
                    break;
                case null:
                    TomlTable made = new(at, origin);
                    table.Add(new TomlEntry(path[i], at, made));
                    table = made;
                    break;
                default:
                    Taken(table, path[..(i + 1)], at);
                    return null;
            }
        }

        return table;
    }

    private void Taken(TomlTable parent, List<string> path, Position at) =>
        errors.Add(at, $"{MessageText.OneLine(string.Join('.', path))} is already defined at line {parent.Find(path[^1])!.KeyAt.Line}");

    // The parser limits the nesting of values, so the recursion is shallow.
    private TomlNode Convert(ValueSyntax value)
    {
        Position at = PositionOf(value.Span);
        switch (value)
        {
            case IntegerValueSyntax integer:
                return new TomlNumber(at, MessageText.OneLine(integer.Token?.Text ?? ""), integer.Value);
            case FloatValueSyntax number:
                return new TomlNumber(at, MessageText.OneLine(number.Token?.Text ?? ""), number.Value);
            case StringValueSyntax text:
                return new TomlText(at, text.Value ?? "");
            case ArraySyntax array:
                TomlArray items = new(at, isOfTables: false);
                items.Items.AddRange(array.Items.Select(i => Convert(i.Value!)));
                return items;
            case InlineTableSyntax inline:
                TomlTable table = new(at, TableOrigin.Inline);
                foreach (InlineTableItemSyntax item in inline.Items)
                {
                    Add(table, item.KeyValue!);
                }

                return table;
            default:
                return new TomlOther(at, MessageText.OneLine(value.ToString().Trim()));
        }
    }

    private static List<string> PathOf(KeySyntax key) => [TextOf(key.Key), .. key.DotKeys.Select(d => TextOf(d.Key))];

    private static string TextOf(BareKeyOrStringValueSyntax? key) => key switch
    {
        BareKeySyntax bare => bare.Key?.Text ?? "",
        StringValueSyntax quoted => quoted.Value ?? "",
        _ => "",
    };
}
