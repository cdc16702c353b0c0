using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Tests.Reports;

/// <summary>Reports whose every text tries to be more than text.</summary>
internal static class Hostile
{
    public static string[] Texts { get; } =
    [
        "<script>alert(1)</script> & \"quoted\" 'single' ]]> <!-- --> &amp; &#60;",
        "</title></style></svg><img src=x onerror=alert(1)>",
        "[click](javascript:alert(1)) ![x](http://example.invalid/x.png) <http://example.invalid> www.example.invalid a@example.invalid",
        "# heading | cell | `code` **bold** _it_ ~~gone~~ \\ $x$ $$y$$",
        "1. one", "- item", "+ item", "=== rule", "> quote", "---", "12) twelve", "| a | b |",
        "\u001b[31mred\u001b[0m \u0007\u0000\u202e turned \ufffe\ud800 end",
    ];

    public static Report Report(string text)
    {
        var rows = new RowsChart(
            [new ChartRow(text, text, [new ChartMark(MarkShape.Bar, new Interval(0.5, 0.4, 0.6))])],
                new ChartAxis(text, x => x.ToString("0.##")));
        var small = DistributionPicture.Of(new Normal(0, 1), 0);
        return AxleRisk.Reports.Content.Report.Of(
            text,
            [
                new Section(text, [new Paragraph(text), new Headline(text, text, [text]), new Warning(text), new Subheading(text)]),
                new Section(
                    text,
                    [
                        new ItemList([text, text]), new ItemList([text], IsNumbered: true), new CommandLines([text]),
                        new Table(text, [new Column(text, true), new Column("", false), new Column(text, false)],
                            [[new Cell(text, null, text), new Cell("", new Picture("small", text, small)), new Cell(text)]]),
                        new Figure(new Picture("rows", text, rows), text),
                    ]),
            ],
            []);
    }
}
