using AxleRisk.App.Text;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>
/// An answer's blocks as lines for a terminal or a page of the console; the reports have renderers of their own. Most figures
/// have no lines: what they show stands in the table beside them, and the console draws its own pictures.
/// </summary>
internal static class BlockLines
{
    private const string Margin = "  ";

    /// <summary>The lines, with an empty one between blocks, but for a heading and what it is of.</summary>
    public static IEnumerable<TextLine> Of(IEnumerable<Block> blocks, int width = Layout.Width)
    {
        bool isFirst = true, isUnderHeading = false;
        foreach (Block block in blocks)
        {
            TextLine[] lines = [.. Of(block, width)];
            if (lines.Length == 0)
            {
                continue;
            }

            if (!isFirst && !isUnderHeading)
            {
                yield return TextLine.Empty;
            }

            foreach (TextLine line in lines)
            {
                yield return line;
            }

            (isFirst, isUnderHeading) = (false, block is Subheading);
        }
    }

    private static IEnumerable<TextLine> Of(Block block, int width) => block switch
    {
        Paragraph p => Wrapped(p.Text, width),
        Subheading h => Wrapped(h.Text, width, LineKind.Heading),
        Headline h =>
        [
            .. Wrapped(h.Label + ": " + h.Number, width, LineKind.Heading),
            .. h.Details.SelectMany(d => Indented(d, width, "")),
        ],
        ItemList l => l.Items.SelectMany((item, i) => l.IsNumbered
            ? Indented($"{i + 1}. {item}", width, new string(' ', $"{i + 1}. ".Length))
            : Indented(item, width, Margin)),
        Warning w => Wrapped(w.Text, width, LineKind.Warning),
        CommandLines c => c.Lines.Select(l => new TextLine(Printable.Line(l))),
        Table t => [.. Wrapped(t.Caption, width, LineKind.Heading), .. TableLines.Of(t, width).Select(l => new TextLine(l))],
        Figure f => f.InLines ? FigureLines.Of(f, width) : [],
        _ => throw new ArgumentOutOfRangeException(nameof(block), block.GetType().Name, "a kind of block that has no lines"),
    };

    private static IEnumerable<TextLine> Wrapped(string text, int width, LineKind kind = LineKind.Plain) =>
        Words(text, width, "").Select(line => new TextLine(line, kind));

    private static IEnumerable<TextLine> Indented(string text, int width, string indent) =>
        Words(text, width - Margin.Length, indent).Select(line => new TextLine(Margin + line));

    /// <summary>Wraps a text; a number stays with its unit.</summary>
    private static IEnumerable<string> Words(string text, int width, string indent) =>
        Wrap.Lines(Units.Aggregate(Printable.Line(text), (t, unit) => t.Replace(" " + unit, "\u00a0" + unit)), width, indent)
            .Select(line => line.Replace('\u00a0', ' '));

    private static readonly string[] Units = ["%", "km", "kg", "mm"];
}
