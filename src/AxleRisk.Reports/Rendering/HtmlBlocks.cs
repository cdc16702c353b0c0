using System.Xml.Linq;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.Reports.Rendering;

/// <summary>The pieces of a section as elements of HTML.</summary>
internal static class HtmlBlocks
{
    /// <summary>A name is offered places to break from this length on.</summary>
    private const int LongName = 16;

    /// <summary>A table of so many rows is not broken over two pages of print.</summary>
    private const int ShortTable = 14;

    /// <summary>A headline whose number is longer is words, and set smaller.</summary>
    private const int LongNumber = 28;

    /// <summary>A table of more columns has a card for each row on a telephone, with its headings beside the values.</summary>
    private const int FewColumns = 3;

    public static XElement Of(Block block) => block switch
    {
        Paragraph p => new XElement("p", SafeText.Flowing(p.Text)),
        Subheading h => new XElement("h3", SafeText.Flowing(h.Text)),
        Headline h => HeadlineOf(h),
        ItemList l => new XElement(l.IsNumbered ? "ol" : "ul", l.Items.Select(i => new XElement("li", SafeText.Flowing(i)))),
        Warning w => new XElement("p", Class("warning"), new XAttribute("role", "note"), SafeText.Flowing(w.Text)),
        CommandLines c => new XElement("div", Class("commands"),
            c.Lines.Select(l => new XElement("p", new XElement("code", SafeText.Of(l))))),
        Figure f => new XElement(
            "figure", Pictures(f.Picture),
            new XElement("figcaption", new XElement("b", $"Figure {f.Number}."), " " + SafeText.Flowing(f.Caption))),
        Table t => TableOf(t),
        _ => throw new ArgumentOutOfRangeException(nameof(block), block.GetType().Name, "a kind of block that has no HTML"),
    };

    private static XElement HeadlineOf(Headline headline) => new(
        "div", Class(headline.Number.Length > LongNumber ? "headline words" : "headline"),
        new XElement("p", Class("label"), SafeText.Flowing(headline.Label)),
        new XElement("p", Class("number"), SafeText.Flowing(headline.Number)),
        headline.Details.Select(d => new XElement("p", SafeText.Flowing(d))));

    private static IEnumerable<XElement> Pictures(Picture picture)
    {
        if (!picture.Chart.HasNarrowForm)
        {
            return [Svg(picture, ChartWidth.Wide, "small", "")];
        }

        return [Svg(picture, ChartWidth.Wide, "wide", "w-"), Svg(picture, ChartWidth.Narrow, "narrow", "n-")];
    }

    private static XElement Svg(Picture picture, ChartWidth form, string kind, string prefix)
    {
        XElement svg = picture.Chart.Svg(form, $"{prefix}{picture.Name}-");
        svg.Add(Class(kind), new XAttribute("role", "img"), new XAttribute("aria-label", SafeText.Flowing(picture.Alternative)));
        return svg;
    }

    /// <summary>
    /// A table in a frame of its own that scrolls where the screen is narrow; the keyboard can reach it. One of many columns
    /// becomes cards there.
    /// </summary>
    private static XElement TableOf(Table table) => new(
        "div",
        Class((table.Rows.Length <= ShortTable ? "frame short" : "frame") + (table.Columns.Length > FewColumns ? " many" : "")),
        new XAttribute("role", "region"),
        new XAttribute("tabindex", "0"), new XAttribute("aria-label", SafeText.Flowing(table.Caption)),
        new XElement(
            "table",
            new XElement("caption", new XElement("b", $"Table {table.Number}."), " " + SafeText.Flowing(table.Caption)),
            new XElement("thead", new XElement("tr", table.Columns.Select(c => c.Header.Length == 0
                ? new XElement("td", "")
                : new XElement("th", new XAttribute("scope", "col"), Side(c), SafeText.Flowing(c.Header))))),
            new XElement("tbody",
                table.Rows.Select(row => new XElement("tr", row.Select((cell, i) => CellOf(cell, table.Columns[i], i == 0)))))));

    private static XElement CellOf(Cell cell, Column column, bool isName)
    {
        IEnumerable<object> note = cell.Note.Length == 0 ? [] : [new XElement("small", Breakable(SafeText.Flowing(cell.Note)))];
        object[] content = cell.Picture is { } picture ? [.. Pictures(picture)] : [.. Breakable(SafeText.Flowing(cell.Text)), .. note];
        return isName
            ? new XElement("th", new XAttribute("scope", "row"), content)
            : new XElement(
                "td", cell.Text.Length > LongName && column.IsText ? Class("text long") : Side(column),
                column.Header.Length == 0 ? null : new XAttribute("data-head", SafeText.Flowing(column.Header)), content);
    }

    /// <summary>A long name, alone or in a text, may break after a point or an underscore.</summary>
    private static IEnumerable<object> Breakable(string text)
    {
        int start = 0, word = 0;
        for (int i = 0; i < text.Length; i++)
        {
            word = text[i] == ' ' ? i + 1 : word;
            int end = text.IndexOf(' ', word);
            if (text[i] is '.' or '_' && (end < 0 ? text.Length : end) - word >= LongName)
            {
                yield return text[start..(i + 1)];
                yield return new XElement("wbr");
                start = i + 1;
            }
        }

        yield return text[start..];
    }

    private static XAttribute? Side(Column column) => column.IsText ? Class("text") : null;

    private static XAttribute Class(string name) => new("class", name);
}
