using System.Text;
using System.Xml;
using System.Xml.Linq;
using AxleRisk.Reports.Content;

namespace AxleRisk.Reports.Rendering;

/// <summary>
/// A report as one page of HTML that needs nothing else: no network, no script, no other file. It is also well-formed XML.
/// </summary>
public static class HtmlRenderer
{
    private static readonly XmlWriterSettings Settings = new()
    {
        OmitXmlDeclaration = true,
        Indent = true,
        IndentChars = " ",
        NewLineChars = "\n",
        ConformanceLevel = ConformanceLevel.Fragment,
    };

    /// <summary>The page.</summary>
    public static string Render(Report report)
    {
        var page = new StringBuilder("<!DOCTYPE html>\n");
        using (var writer = XmlWriter.Create(page, Settings))
        {
            Page(report).WriteTo(writer);
        }

        return page.Append('\n').ToString();
    }

    private static XElement Page(Report report)
    {
        string title = SafeText.Of(report.Title);
        return new XElement(
            "html", new XAttribute("lang", "en"),
            new XElement(
                "head",
                new XElement("meta", new XAttribute("charset", "utf-8")),
                new XElement("meta", new XAttribute("name", "viewport"), new XAttribute("content", "width=device-width, initial-scale=1")),
                new XElement("meta", new XAttribute("name", "color-scheme"), new XAttribute("content", "light dark")),
                new XElement("title", title),
                new XElement("style", Stylesheet.Text + Stylesheet.RunningHead(title))),
            new XElement(
                "body",
                new XElement("header", new XElement("h1", title)),
                new XElement("main", report.Sections.SelectMany((s, i) => i == 1 ? new[]
                    { Contents(report), Section(s, i) } : [Section(s, i)]))));
    }

    /// <summary>The list of sections: after the first, which is what most readers came for.</summary>
    private static XElement Contents(Report report) => new(
        "nav", new XAttribute("aria-label", "Contents"),
        new XElement("ol", report.Sections.Select((s, i) => new XElement(
            "li", new XElement("a", new XAttribute("href", "#" + Id(i)), SafeText.Of(s.Title))))));

    private static XElement Section(Section section, int index) => new(
        "section", new XAttribute("aria-labelledby", Id(index)),
        new XElement("h2", new XAttribute("id", Id(index)), SafeText.Of(section.Title)),
        section.Blocks.Select(HtmlBlocks.Of));

    private static string Id(int index) => $"section-{index + 1}";
}
