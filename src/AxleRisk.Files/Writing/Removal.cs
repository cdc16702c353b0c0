using Tomlyn.Syntax;

namespace AxleRisk.Files.Writing;

/// <summary>Takes pieces of a scenario's text out: comments stay, but for those inside a table that goes as a whole.</summary>
internal static class Removal
{
    public static IEnumerable<Splice> Of(string text, IEnumerable<SyntaxNode> pieces)
    {
        // A table and those inside it that follow at once are one block.
        (int Start, int End)? block = null;
        foreach (SyntaxNode piece in pieces)
        {
            if (piece is not TableSyntaxBase header)
            {
                foreach (Splice splice in Of(text, piece))
                {
                    yield return splice;
                }

                continue;
            }

            int start = TextLines.Start(text, header.Span.Start.Offset);
            if (block is (_, int before) && start >= before && TextLines.IsBlank(text, before, start))
            {
                block = (block.Value.Start, EndOfBlock(text, header));
                continue;
            }

            if (block is not null)
            {
                yield return Block(text, block.Value.Start, block.Value.End);
            }

            block = (start, EndOfBlock(text, header));
        }

        if (block is not null)
        {
            yield return Block(text, block.Value.Start, block.Value.End);
        }
    }

    private static IEnumerable<Splice> Of(string text, SyntaxNode piece) => piece switch
    {
        KeyValueSyntax { Parent: InlineTableItemSyntax { Parent: SyntaxList<InlineTableItemSyntax> items } item } =>
            Item(text, items, item, i => i.Comma),
        ArrayItemSyntax { Parent: SyntaxList<ArrayItemSyntax> items } item => Item(text, items, item, i => i.Comma),
        KeyValueSyntax pair => Line(text, pair),
        _ => throw new EditException("this cannot be taken out"),
    };

    /// <summary>Behind the last character of what stands under a header.</summary>
    public static int EndOfBlock(string text, TableSyntaxBase header) =>
        TextLines.End(text, header.Items.ChildrenCount > 0
            ? header.Items.Last().Value!.Span.End.Offset : header.CloseBracket!.Span.End.Offset);

    private static IEnumerable<Splice> Line(string text, KeyValueSyntax pair)
    {
        int valueEnd = pair.Value!.Span.End.Offset + 1;
        int end = TextLines.End(text, valueEnd - 1);
        int keyStart = pair.Key!.Span.Start.Offset;
        int comment = text.IndexOf('#', valueEnd, end - valueEnd);
        yield return comment < 0 ? new Splice(TextLines.Start(text, keyStart), end, "") : new Splice(keyStart, comment, "");
    }

    // Of the blank lines above and below one goes with the block.
    private static Splice Block(string text, int start, int end)
    {
        bool blankAbove = start == 0 || TextLines.IsBlank(text, TextLines.Start(text, start - 1), start);
        while (blankAbove && end < text.Length && TextLines.IsBlank(text, end, TextLines.End(text, end)))
        {
            end = TextLines.End(text, end);
        }

        if (end == text.Length && blankAbove && start > 0)
        {
            start = TextLines.Start(text, start - 1);
        }

        return new Splice(start, end, "");
    }

    private static IEnumerable<Splice> Item<T>(string text, SyntaxList<T> items, T item, Func<T, SyntaxToken?> comma)
        where T : SyntaxNode
    {
        T[] all = [.. items];
        int index = Array.IndexOf(all, item);
        int start = item.Span.Start.Offset;
        int end = item.Span.End.Offset + 1;
        if (index < all.Length - 1)
        {
            while (end < text.Length && text[end] is ' ' or '\t')
            {
                end++;
            }
        }
        else
        {
            while (start > 0 && text[start - 1] is ' ' or '\t')
            {
                start--;
            }

            if (comma(item) is null && index > 0 && comma(all[index - 1]) is SyntaxToken before)
            {
                int at = before.Span.Start.Offset;
                if (at + 1 == start)
                {
                    start = at;
                }
                else
                {
                    yield return new Splice(at, at + 1, "");
                }
            }

            if (index == 0 && end < text.Length && text[end] == ' ')
            {
                end++;
            }
        }

        yield return new Splice(start, end, "");
    }
}
