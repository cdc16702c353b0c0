using System.Xml.Linq;
using AxleRisk.Reports.Rendering;
using Xunit;

namespace AxleRisk.App.Tests.Reports;

public sealed class HtmlRendererTests
{
    public static TheoryData<string> Texts => [.. Hostile.Texts];

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_hostile_text_stays_text(string text)
    {
        XElement page = Parsed(text);
        string[] elements = [.. page.Descendants().Select(e => e.Name.LocalName).Distinct()];
        Assert.DoesNotContain("script", elements);
        Assert.DoesNotContain("img", elements);
        Assert.DoesNotContain(page.Descendants().Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase));
        Assert.Equal(SafeText.Of(text), page.Element("head")!.Element("title")!.Value);
        Assert.Equal(SafeText.Flowing(text), page.Descendants("p").First().Value);
        Assert.Equal(SafeText.Flowing(text), (string?)page.Descendants("svg").First(s => s.Attribute("class")!.Value == "wide")
            .Attribute("aria-label"));
        Assert.DoesNotContain(page.ToString(), c => char.IsControl(c) && c is not ('\n' or '\r'));
    }

    [Fact]
    public void The_page_needs_nothing_from_elsewhere()
    {
        XElement page = Parsed("plain");
        HashSet<string> ids = [.. page.Descendants().Attributes("id").Select(a => "#" + a.Value)];
        Assert.Equal(ids.Count, page.Descendants().Attributes("id").Count()); // no two alike
        string[] links = [.. page.Descendants().Attributes().Where(a => a.Name.LocalName is "href" or "src" or "data")
            .Select(a => a.Value)];
        Assert.NotEmpty(links);
        Assert.All(links, l => Assert.Contains(l, ids));
        string[] clips = [.. page.Descendants().Attributes("clip-path").Select(a => a.Value)];
        Assert.NotEmpty(clips);
        Assert.All(clips, c => Assert.Contains(c[4..^1], ids));
        string style = page.Descendants("style").Single().Value;
        Assert.DoesNotContain("url(", style, StringComparison.Ordinal);
        Assert.DoesNotContain("@import", style, StringComparison.Ordinal);
    }

    [Fact]
    public void Tables_and_figures_can_be_read_without_seeing_them()
    {
        XElement page = Parsed("plain");
        Assert.All(page.Descendants("th"), th => Assert.Contains((string?)th.Attribute("scope"), new[] { "col", "row" }));
        Assert.All(page.Descendants("table"), t => Assert.NotNull(t.Element("caption")));
        Assert.All(page.Descendants("figure"), f => Assert.NotNull(f.Element("figcaption")));
        Assert.All(page.Descendants("svg"), s => Assert.Equal("img", (string?)s.Attribute("role")));
        Assert.Equal("en", (string?)page.Attribute("lang"));
        Assert.Single(page.Descendants("h1"));
    }

    [Fact]
    public void The_colours_of_charts_are_those_of_the_page()
    {
        XElement svg = Parsed("plain").Descendants("svg").First(s => s.Attribute("class")!.Value == "wide");
        string[] styles = [.. svg.Descendants().Attributes("style").Select(a => a.Value)];
        Assert.Contains("fill:var(--accent)", styles);
        Assert.DoesNotContain("#01010", svg.ToString(), StringComparison.Ordinal);
        Assert.All(svg.Descendants("text"), t => Assert.NotNull(t.Attribute("textLength")));
    }

    /// <summary>The page read by a parser that forgives nothing (XML 1.0); a browser's own is more lenient.</summary>
    private static XElement Parsed(string text)
    {
        string html = HtmlRenderer.Render(Hostile.Report(text));
        Assert.StartsWith("<!DOCTYPE html>\n", html, StringComparison.Ordinal);
        return XDocument.Parse(html["<!DOCTYPE html>\n".Length..], LoadOptions.PreserveWhitespace).Root!;
    }
}
