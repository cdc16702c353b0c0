using System.Collections.Immutable;
using AxleRisk.App.Answers;
using AxleRisk.App.Text;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Screens.Pages;

/// <summary>What a piece of text is, for the look to choose how to show it; no meaning rests on it alone.</summary>
internal enum Ink
{
    /// <summary>Running text and figures.</summary>
    Plain,

    /// <summary>A heading.</summary>
    Heading,

    /// <summary>What can be passed over: units, defaults, axes.</summary>
    Quiet,

    /// <summary>A figure or a curve to look at first.</summary>
    Strong,

    /// <summary>What asks for care: out of date, refused, partial.</summary>
    Warning,

    /// <summary>A second curve, a band, a mark beside the strong one.</summary>
    Mark,

    /// <summary>The row or tab that is chosen.</summary>
    Chosen,

    /// <summary>The bars above and below the page.</summary>
    Bar,
}

/// <summary>A piece of a line, in one ink.</summary>
internal readonly record struct Piece(string Text, Ink Ink = Ink.Plain);

/// <summary>One line of a page: pieces side by side.</summary>
internal sealed record PageLine(ImmutableArray<Piece> Pieces)
{
    public static PageLine Empty { get; } = new([]);

    /// <summary>The line as bare text.</summary>
    public string Text => string.Concat(Pieces.Select(p => p.Text));

    /// <summary>The number of characters.</summary>
    public int Length => Pieces.Sum(p => p.Text.Length);

    public static PageLine Of(string text, Ink ink = Ink.Plain) => new([new Piece(text, ink)]);

    public static PageLine Of(params Piece[] pieces) => new([.. pieces]);

    /// <summary>Lines as the commands print them.</summary>
    public static IEnumerable<PageLine> Of(IEnumerable<TextLine> lines) => lines.Select(line => Of(line.Text, line.Kind switch
    {
        LineKind.Heading => Ink.Heading,
        LineKind.Warning => Ink.Warning,
        _ => Ink.Plain,
    }));

    /// <summary>Blocks of an answer as the commands print them, no wider than the commands' lines.</summary>
    public static IEnumerable<PageLine> Of(IEnumerable<Block> blocks, int width = Layout.Width) =>
        Of(BlockLines.Of(blocks, Math.Min(width, Layout.Width)));

    /// <summary>This line filled up or cut to exactly <paramref name="width"/> characters.</summary>
    public PageLine Fit(int width, Ink filling = Ink.Plain)
    {
        var pieces = ImmutableArray.CreateBuilder<Piece>();
        int left = Math.Max(0, width);
        foreach (Piece piece in Pieces.Where(p => p.Text.Length > 0))
        {
            string text = piece.Text.Length <= left ? piece.Text : piece.Text[..left];
            pieces.Add(piece with { Text = text });
            left -= text.Length;
        }

        if (left > 0)
        {
            pieces.Add(new Piece(new string(' ', left), filling));
        }

        return new PageLine(pieces.ToImmutable());
    }

    /// <summary>This line with every piece in one ink.</summary>
    public PageLine In(Ink ink) => new([.. Pieces.Select(p => p with { Ink = ink })]);

    /// <summary>This line and another behind it.</summary>
    public PageLine Then(PageLine other) => new([.. Pieces, .. other.Pieces]);

    /// <summary>Two columns side by side, the left one <paramref name="leftWidth"/> characters wide.</summary>
    public static IEnumerable<PageLine> Beside(IReadOnlyList<PageLine> left, int leftWidth, IReadOnlyList<PageLine> right) =>
        Enumerable.Range(0, Math.Max(left.Count, right.Count)).Select(i =>
            (i < left.Count ? left[i] : Empty).Fit(leftWidth).Then(i < right.Count ? right[i] : Empty));
}
