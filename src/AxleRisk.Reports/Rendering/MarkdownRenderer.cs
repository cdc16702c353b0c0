using AxleRisk.Reports.Content;

namespace AxleRisk.Reports.Rendering;

/// <summary>A report as Markdown that shows the picture files beside it.</summary>
public static class MarkdownRenderer
{
    /// <summary>The document; lines end with a line feed.</summary>
    public static string Render(Report report) =>
        string.Join("\n\n", report.Sections.SelectMany(SectionOf).Prepend("# " + MarkdownText.Of(report.Title))) + "\n";

    private static IEnumerable<string> SectionOf(Section section) =>
        section.Blocks.Select(Of).Prepend("## " + MarkdownText.Of(section.Title));

    private static string Of(Block block) => block switch
    {
        Paragraph p => MarkdownText.Of(p.Text),
        Subheading h => "### " + MarkdownText.Of(h.Text),
        Headline h => string.Join("  \n", h.Details.Select(MarkdownText.Of)
            .Prepend($"{MarkdownText.Of(h.Label)}: **{MarkdownText.Of(h.Number)}**")),
        ItemList l => string.Join('\n', l.Items.Select((text, i) => (l.IsNumbered ? $"{i + 1}. " : "- ") + MarkdownText.Of(text))),
        Warning w => "> " + MarkdownText.Of(w.Text),
        CommandLines c => CodeOf(c),
        Figure f => $"{Image(f.Picture)}\n\n**Figure {f.Number}.** {MarkdownText.Of(f.Caption)}",
        Table t => TableOf(t),
        _ => throw new ArgumentOutOfRangeException(nameof(block), block.GetType().Name, "a kind of block that has no Markdown"),
    };

    /// <summary>Lines between fences that are longer than any row of ticks in them.</summary>
    private static string CodeOf(CommandLines commands)
    {
        string[] lines = [.. commands.Lines.Select(SafeText.Of)];
        string fence = "```";
        while (lines.Any(l => l.Contains(fence, StringComparison.Ordinal)))
        {
            fence += "`";
        }

        return string.Join('\n', [fence + "text", .. lines, fence]);
    }

    private static string TableOf(Table table)
    {
        IEnumerable<string> lines =
        [
            Row(table.Columns.Select(c => MarkdownText.Of(c.Header))),
            Row(table.Columns.Select((c, i) => i == 0 || c.IsText ? ":---" : "---:")),
            .. table.Rows.Select(row => Row(row.Select(CellOf))),
        ];
        return $"**Table {table.Number}.** {MarkdownText.Of(table.Caption)}\n\n{string.Join('\n', lines)}";
    }

    private static string Row(IEnumerable<string> cells) => $"| {string.Join(" | ", cells)} |";

    private static string CellOf(Cell cell) => cell.Picture is { } picture
        ? Image(picture)
        : MarkdownText.Of(cell.Text) + (cell.Note.Length == 0 ? "" : $" ({MarkdownText.Of(cell.Note)})");

    private static string Image(Picture picture) => $"![{MarkdownText.Of(picture.Alternative)}]({PictureFiles.PathOf(picture)})";
}
