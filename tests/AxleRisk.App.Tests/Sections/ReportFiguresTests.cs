using System.Text;
using System.Text.Json.Nodes;
using System.Xml.Linq;
using AxleRisk.App.Answers;
using AxleRisk.App.Sections;
using AxleRisk.App.Tests.Sections.Figures;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.App.Tests.Sections;

/// <summary>
/// The reports of the shipped scenarios, read line by line against what the commands give as JSON in the same run: every figure of
/// every sentence and table. Pictures are not read, nor the author's own words.
/// </summary>
public sealed class ReportFiguresTests(ITestOutputHelper output)
{
    /// <summary>The share of falsified figures that has to be noticed; the rest are digits that another figure there could have.</summary>
    private const double LeastNoticed = 0.94;

    public static TheoryData<string> Shipped => [.. ShippedReports.Names];

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Every_figure_is_one_of_the_commands(string scenario)
    {
        Reading[] figures = [.. Read(ShippedReports.Studies(scenario))];
        Assert.True(figures.Length > 900, $"{figures.Length} figures");
        Assert.Empty(figures.Where(f => !f.IsKnown).Select(f => $"{f.Figure.Text} ({f.Figure.Kind}) in: {f.Where}"));

        int noticed = figures.Where((f, i) => !f.Explains(Falsified(f.Figure, i))).Count();
        output.WriteLine($"{noticed} of {figures.Length} falsified figures noticed");
        Assert.True(noticed >= LeastNoticed * figures.Length, $"{noticed} of {figures.Length} falsified figures noticed");
    }

    /// <summary>A figure with one digit changed.</summary>
    private static PrintedFigure Falsified(PrintedFigure figure, int turn)
    {
        int[] digits = [.. Enumerable.Range(0, figure.Text.Length).Where(i => char.IsAsciiDigit(figure.Text[i]))];
        int at = digits[turn % digits.Length];
        char other = (char)('0' + ((figure.Text[at] - '0' + 1 + (turn % 9)) % 10));
        return Assert.Single(PrintedFigure.In(figure.Text[..at] + other + figure.Text[(at + 1)..])) with { Kind = figure.Kind };
    }

    private static IEnumerable<Reading> Read(ReportStudies studies)
    {
        Scenario scenario = studies.Document.Scenario;
        (string Name, JsonObject Document)[] documents =
            [.. ReportComposer.Documents(studies).Select(d => (d.Name, JsonNode.Parse(Documents.Json.Write(d.Document))!.AsObject()))];
        var asked = studies.Plan.Steps.ToDictionary(p => p.Command, p => (double)p.Settings.Evaluations);
        var stated = new StatedNumbers(Encoding.UTF8.GetString(studies.Document.Sources[0].Bytes.Span));
        foreach (XElement section in ShippedReports.Page(studies).Descendants("section"))
        {
            string title = section.Element("h2")!.Value;
            string[] own = title switch
            {
                "Inputs" => ["check"],
                "Base case, and one factor at a time" => ["base"],
                "Summary" or "To repeat it" => [.. documents.Select(d => d.Name)],
                _ => [.. studies.Made.Where(m => m.Step.Study.Title == title).Select(m => m.Step.Command)],
            };
            var known = new KnownNumbers(documents.Where(d => own.Contains(d.Name)).Select(d => d.Document), scenario.LabelOf, asked);
            var check = new FigureCheck(known, stated, studies.Risk.Run.Evaluations);
            int rows = 0;
            XElement[] blocks = [.. section.Elements().Skip(1)];
            foreach (XElement block in blocks.Where((b, i) => i == 0 || Flat(blocks[i - 1].Value) != InputNoteBlocks.Heading))
            {
                foreach (Reading reading in Read(check, block, title, studies, studies.Model.Factors.Factors.Length - rows))
                {
                    yield return reading with { Where = $"{title} > {reading.Where}" };
                }

                rows = block.Element("table") is { } table ? table.Element("tbody")!.Elements().Count() : 0;
            }
        }
    }

    private static IEnumerable<Reading> Read(FigureCheck check, XElement block, string title, ReportStudies studies, double leftOut)
    {
        bool isOfInputs = title == "Inputs";
        string kind = ((string?)block.Attribute("class"))?.Split(' ')[0] ?? block.Name.LocalName;
        return kind switch
        {
            "commands" => [], // what they say of evaluations and seed stands in a table, too
            "frame" => check.Sentence(block.Element("table")!.Element("caption")!.Value)
                .Concat(check.Table(block.Element("table")!, isOfInputs)),
            "headline" => block.Elements().SelectMany(e => check.Sentence(e.Value)),
            "ul" or "ol" => block.Elements().Where(e => !e.Value.StartsWith("Notes: ", StringComparison.Ordinal))
                .SelectMany((e, i) => check.Sentence(e.Value, Place(title, e.Value, i), isOfInputs)),
            "figure" => check.Sentence(block.Element("figcaption")!.Value),
            _ when Flat(block.Value) == Flat(studies.Document.Scenario.About) => [],
            _ => check.Sentence(block.Value, "", isOfInputs, leftOut),
        };
    }

    /// <summary>What an item tells of by its place.</summary>
    private static string Place(string title, string text, int i) => title == "Combined effects" ? $"combinations {i + 1}"
        : text.StartsWith("The worst combination", StringComparison.Ordinal) ? "combinations 1" : "";

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
