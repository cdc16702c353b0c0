using AxleRisk.Reports.Rendering;
using Markdig;
using Markdig.Extensions.Tables;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Xunit;

namespace AxleRisk.App.Tests.Reports;

/// <summary>The Markdown read by a parser that is not ours (Markdig, CommonMark with tables and bare links).</summary>
public sealed class MarkdownRendererTests
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().UsePipeTables().UseAutoLinks().UseEmphasisExtras()
        .UseMathematics().Build();

    public static TheoryData<string> Texts => [.. Hostile.Texts];

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_hostile_text_stays_text(string text)
    {
        MarkdownDocument document = Markdown.Parse(MarkdownRenderer.Render(Hostile.Report(text)), Pipeline);
        Assert.Empty(document.Descendants<HtmlBlock>());
        Assert.Empty(document.Descendants<HtmlInline>());
        Assert.Empty(document.Descendants<AutolinkInline>());
        Assert.Equal(["figures/small.png", "figures/rows.png"], document.Descendants<LinkInline>().Select(l => l.Url));
        Assert.Single(document.Descendants<Table>());
        Assert.Equal(4, document.Descendants<HeadingBlock>().Count()); // title, two sections, one inside
        string expected = SafeText.Of(text).Trim();
        Assert.Equal(expected, Plain(document.Descendants<HeadingBlock>().First()));
        Assert.Equal(expected, Plain(document.Descendants<ParagraphBlock>().First()));
        Assert.Equal(3, document.Descendants<ListItemBlock>().Count());
        Assert.All(document.Descendants<ListItemBlock>(),
            item => Assert.Equal(expected, Plain(item.Descendants<ParagraphBlock>().Single())));
        TableRow row = document.Descendants<TableRow>().Last();
        Assert.Equal(3, row.Count);
        Assert.Equal(expected, Plain(row[2].Descendants<ParagraphBlock>().Single()));
    }

    private static string Plain(LeafBlock block) => string.Concat(block.Inline!.Descendants().Select(i => i switch
    {
        LiteralInline l => l.Content.ToString(),
        HtmlEntityInline e => e.Transcoded.ToString(),
        _ => "",
    }));
}
