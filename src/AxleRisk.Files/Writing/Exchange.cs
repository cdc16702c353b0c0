using Tomlyn.Syntax;

namespace AxleRisk.Files.Writing;

/// <summary>Lets neighbours in an array of tables change places, with the comments directly above them.</summary>
internal static class Exchange
{
    /// <summary>What exchanges an element and the one behind it.</summary>
    /// <exception cref="EditException">There are no two such elements, or the tables of one are scattered over the file.</exception>
    public static IEnumerable<Splice> Of(string text, ArrayPlace array, int index)
    {
        if (index < 0 || index + 1 >= array.Items.Count)
        {
            throw new EditException("there is nothing to change places with");
        }

        (int firstStart, int firstEnd) = Extent(text, array, index);
        (int secondStart, int secondEnd) = Extent(text, array, index + 1);
        if (firstEnd > secondStart)
        {
            throw new EditException("the tables of the two are mixed in the file, so they cannot change places");
        }

        string newLine = TextLines.NewLine(text);
        string second = text[secondStart..secondEnd];
        bool isLineMissing = array.Inline is null && !second.EndsWith('\n');
        yield return new Splice(firstStart, firstEnd, isLineMissing ? second + newLine : second);
        yield return new Splice(secondStart, secondEnd, text[firstStart..firstEnd]);
    }

    private static (int Start, int End) Extent(string text, ArrayPlace array, int index)
    {
        SyntaxNode[] pieces = [.. array.Items[index].Pieces];
        if (array.Inline is not null)
        {
            // Between commas, which stay; the value alone, without them.
            SyntaxNode value = pieces[0] is ArrayItemSyntax item ? item.Value! : pieces[0];
            return (value.Span.Start.Offset, value.Span.End.Offset + 1);
        }

        TableSyntaxBase[] headers = [.. pieces.OfType<TableSyntaxBase>()];
        int start = headers.Min(h => TextLines.Start(text, h.Span.Start.Offset));
        int end = headers.Max(h => Removal.EndOfBlock(text, h));
        if (index + 1 < array.Items.Count
            && array.Items[index + 1].Pieces.OfType<TableSyntaxBase>().Min(h => h.Span.Start.Offset) < end)
        {
            throw new EditException("the tables of the two are mixed in the file, so they cannot change places");
        }

        return (TextLines.StartOfComments(text, start), end);
    }
}
