using System.Xml.Linq;

namespace AxleRisk.Reports.Charts;

/// <summary>
/// Makes the SVG of the drawing library fit for a page: colours that stand for tones become variables of the page's style,
/// text goes by the page's font at the width it was laid out for, and identifiers, which the library counts up over all that a
/// process draws, are counted anew in each picture.
/// </summary>
internal static class SvgPicture
{
    public static XElement ForPage(string svg, int width, int height, string prefix)
    {
        XElement drawn = XDocument.Parse(svg).Root!;
        var names = drawn.Descendants().Attributes("id").Select((a, i) => (a.Value, Name: $"{prefix}{i + 1}"))
            .ToDictionary(x => x.Value, x => x.Name);
        return new XElement("svg", new XAttribute("viewBox", $"0 0 {width} {height}"), drawn.Nodes().Select(n => Copy(n, names)));
    }

    /// <summary>A node without its namespace: inside a page of HTML the parser gives it.</summary>
    private static object? Copy(XNode node, Dictionary<string, string> names) => node switch
    {
        XElement { Name.LocalName: "text" } text => Text(text),
        XElement element => new XElement(
            element.Name.LocalName, Attributes(element, names), element.Nodes().Select(n => Copy(n, names))),
        XText text => string.IsNullOrWhiteSpace(text.Value) ? null : text.Value,
        _ => null,
    };

    private static IEnumerable<XAttribute> Attributes(XElement element, Dictionary<string, string> names)
    {
        List<string> styles = [];
        foreach (XAttribute attribute in element.Attributes().Where(a => !a.IsNamespaceDeclaration))
        {
            string name = attribute.Name.LocalName;
            if (name is "fill" or "stroke" && Palette.ToneOf(attribute.Value) is { } tone)
            {
                styles.Add($"{name}:var({Palette.Variable(tone)})");
            }
            else if (name == "id")
            {
                yield return new XAttribute(name, names[attribute.Value]);
            }
            else if (name == "clip-path")
            {
                yield return new XAttribute(name, $"url(#{names[attribute.Value[5..^1]]})");
            }
            else
            {
                yield return new XAttribute(name, attribute.Value);
            }
        }

        if (styles.Count > 0)
        {
            yield return new XAttribute("style", string.Join(';', styles));
        }
    }

    /// <summary>The library sets every letter at a place of its own: here the line keeps its beginning and its length.</summary>
    private static XElement Text(XElement text)
    {
        string words = text.Value.Trim();
        var size = (float)double.Parse(text.Attribute("font-size")!.Value);
        var page = new XElement("text", Attributes(text, []).Where(a => a.Name.LocalName is not ("font-family" or "x" or "y")));
        page.Add(
            new XAttribute("x", First(text, "x")), new XAttribute("y", First(text, "y")),
            new XAttribute("textLength", ChartFont.Width(words, size).ToString("0.##")),
                new XAttribute("lengthAdjust", "spacingAndGlyphs"), words);
        return page;
    }

    private static string First(XElement text, string name) => text.Attribute(name)?.Value.Split(',')[0].Trim() ?? "0";
}
