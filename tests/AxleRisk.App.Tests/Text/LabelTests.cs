using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using AxleRisk.App.Answers;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Pages.Causes;
using AxleRisk.App.Screens.Pages.Combinations;
using AxleRisk.App.Screens.Pages.Ranking;
using AxleRisk.App.Screens.Pages.Remedies;
using AxleRisk.App.Sections;
using AxleRisk.App.Studies;
using AxleRisk.App.Tests.Commands;
using AxleRisk.App.Tests.Screens;
using AxleRisk.App.Tests.Screens.Pages;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Sweeps;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;
using AxleRisk.Reports.Rendering;
using Xunit;

namespace AxleRisk.App.Tests.Text;

/// <summary>The plain words for inputs and factors, and that nothing a reader is told goes by a key of the file.</summary>
public sealed partial class LabelTests
{
    /// <summary>Characters of a label that stands in a table of 80 columns.</summary>
    private const int Longest = 26;

    private static readonly Quantity[] Every = [.. Quantities.All, .. TripQuantities.All];

    public static TheoryData<string> Shipped =>
        ["warranty-clinic-van", "desert-crossing", "broken-housing", "quarry-shuttle", "benchmark-five-legs"];

    [Fact]
    public void Every_quantity_has_short_words_of_its_own()
    {
        // Those of further sections are the first's, and are told apart by the section's name.
        Quantity[] first = [.. Every.Where(q => q.Section != CheckedSection.Table)];
        Assert.Equal(first.Length, first.Select(q => q.Label).Distinct().Count());
        Assert.Equal(Quantities.OfSections.Length, Quantities.OfSections.Select(q => q.Label).Distinct().Count());
        Assert.Equal(Every.Length, Every.Select(q => q.LabelOn("gravel")).Distinct().Count());
        Assert.All(Every, q => Assert.InRange(q.Label.Length, 3, Longest));
        Assert.All(Every, q => Assert.DoesNotMatch(Key(), q.Label));
        Assert.All(Every.Where(q => q.IsPerLeg), q => Assert.Contains("gravel", q.LabelOn("gravel"), StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Shipped))]
    public void No_two_things_of_a_scenario_have_the_same_words(string name)
    {
        Scenario scenario = Trip.Whole(ScenarioReader.ReadFile(Cli.Shipped(name)).Scenario);
        var factors = FactorSet.Of(scenario);
        string[] labels =
        [
            .. scenario.Inputs.Select(i => i.Label), .. Change.WordNames.Select(n => WordFactor.LabelOfName(n)!), MixFactor.FactorLabel,
            .. factors.Factors.OfType<MixFactor>().SelectMany(f => f.ColumnLabels),
        ];
        Assert.Equal(labels.Length, labels.Distinct().Count());
        Assert.All(labels, l => Assert.DoesNotMatch(Key(), l));
        Assert.All(scenario.Inputs, i => Assert.Equal(i.Label, scenario.LabelOf(i.Name)));
        Assert.All(factors.Factors, f => Assert.Equal(f.Label, scenario.LabelOf(f.Name)));
        Assert.All(factors.ColumnNames, c => Assert.Equal(factors.LabelOf(c), scenario.LabelOf(c)));
    }

    [Fact]
    public void A_leg_s_words_name_the_leg()
    {
        Scenario scenario = Trip.Whole(ScenarioReader.ReadFile(Cli.Shipped("desert-crossing")).Scenario);
        Assert.Equal("speed on dunes", scenario.LabelOf("legs.dunes.speed_km_per_h"));
        Assert.Equal("roughness of dunes within its class", scenario.LabelOf("legs.dunes.roughness_within_class"));
        Assert.Equal("trip speed on rocky-pass", scenario.LabelOf("trip.rocky-pass.speed_km_per_h"));
        Assert.Equal("distance before the trip", scenario.LabelOf("trip.already_driven_km"));
        Assert.Equal("share of dunes", scenario.LabelOf("legs.dunes.share"));
        Assert.Equal(("weld category", "road mix"), (scenario.LabelOf("detail.category"), scenario.LabelOf("use.mix")));
        Assert.Equal("no.such_thing", scenario.LabelOf("no.such_thing"));
    }

    // Keys stand in the small print of tables, in the list of what is assumed, and in lines to be typed; nowhere else.
    [Theory]
    [MemberData(nameof(Shipped))]
    public void No_answer_tells_of_an_input_by_its_key(string name)
    {
        ReportStudies studies = ShippedReports.Studies(name);
        Report report = ReportComposer.Compose(studies);
        ScenarioDocument document = studies.Document;
        Assert.True(studies.Made.Length >= 3);
        SweepResult swept = SweepAnalysis.Run(
            studies.Model, [new("axle.wall_mm", "5", "8", 2), new($"legs.{document.Scenario.Legs[0].Name}.speed_km_per_h", "40", "60", 2)],
            new StudySettings(400, 1, "plain"), new RunOptions());
        string[] told =
        [
            .. Told([.. studies.Made.SelectMany(m => m.Blocks),
                .. BaseBlocks.Of(studies.Base), .. StudyBook.Sweep.Blocks(document, swept)]),
            .. report.Sections.Where(s => s.Title is not ("Inputs" or "To repeat it")).SelectMany(s => Told(s.Blocks)),
            .. CheckText.FactorLines(FactorSet.Of(document.Scenario)).Concat(CheckText.CertainLines(document.Scenario))
                .Select(l => Bracketed().Replace(l, "")),
        ];
        Assert.True(told.Length > 500);
        Assert.All(told, text => Assert.DoesNotMatch(Key(), text));
    }

    // Beside its words the factor that is chosen has its key in brackets.
    [Fact]
    public void No_page_of_the_console_tells_of_an_input_by_its_key()
    {
        using Session session = Opened.Session("broken-housing");
        IReadOnlyList<Page> pages = PageBook.Of(session, new NoDialogs());
        try
        {
            Assert.All(
                [
                    Shown<RankingPage, RankResult>(pages, 4_000), Shown<CombinationsPage, CombineResult>(pages, 4_000),
                    Shown<CausesPage, CausesResult>(pages, 16_384), Shown<RemediesPage, RemedySetResult>(pages, 1_000),
                    Opened.Text(pages.OfType<BaseCasePage>().Single()),
                ],
                text =>
                {
                    string words = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
                    Assert.DoesNotMatch(Key(), Bracketed().Replace(words, ""));
                    Assert.Matches("stress factor|damper condition", words);
                });
        }
        finally
        {
            foreach (IDisposable page in pages.OfType<IDisposable>())
            {
                page.Dispose();
            }
        }
    }

    [Fact]
    public void Tables_of_factors_have_the_key_in_small_print()
    {
        ScenarioDocument document = ScenarioReader.ReadFile(Cli.Shipped("benchmark-five-legs"));
        var model = new LifeModel(document.Scenario);
        Table table = BaseBlocks.Of(Core.Analyses.BaseCase.BaseCaseAnalysis.Run(model)).OfType<Table>().Last();
        Assert.All(table.Rows, row => Assert.Equal(row[0].Text, document.Scenario.LabelOf(row[0].Note)));
        Assert.Contains(table.Rows, row => row[0] == new Cell("wall thickness", Note: "axle.wall_mm"));
        Assert.All(BlockLines.Of([table]), line => Assert.DoesNotMatch(Key(), line.Text));
    }

    [Fact]
    public void A_page_and_its_Markdown_set_the_key_in_small_beside_the_words()
    {
        var table = new Table("Factors", [new Column("factor", true)], [[new Cell("S-N scatter", Note: "fatigue.log10_life_scatter")]]);
        Report report = Report.Of("Report", [new Section("Factors", [table])], []);
        Assert.Contains(
            "S-N scatter<small>fatigue.<wbr />log10_<wbr />life_<wbr />scatter</small>", HtmlRenderer.Render(report),
            StringComparison.Ordinal);
        Assert.Contains(@"| S-N scatter (fatigue.log10\_life\_scatter) |", MarkdownRenderer.Render(report), StringComparison.Ordinal);
    }

    [Fact]
    public void Check_tells_words_and_keys()
    {
        string path = Cli.Shipped("desert-crossing");
        string output = Cli.Run("check", path).Out;
        Assert.Contains("  wall thickness (axle.wall_mm): normal(mean 7.2,", output, StringComparison.Ordinal);
        Assert.Contains("  lever arm (axle.lever_arm_mm): ", output, StringComparison.Ordinal);
        JsonNode document = JsonNode.Parse(Cli.Run("check", path, "--json").Out)!;
        JsonNode Of(string list, string name) => document[list]!.AsArray().Single(x => (string?)x!["name"] == name)!;
        Assert.Equal("speed on dunes", (string?)Of("factors", "legs.dunes.speed_km_per_h")["label"]);
        Assert.Equal("lever arm", (string?)Of("certain", "axle.lever_arm_mm")["label"]);
    }

    [Fact]
    public void What_is_assumed_has_words_and_key()
    {
        string output = Cli.Run("base", Cli.Shipped("desert-crossing")).Out;
        Assert.Contains("\n  S-N scatter (fatigue.log10_life_scatter): standard deviation 0.20", output, StringComparison.Ordinal);
    }

    [Fact]
    public void Names_that_would_look_alike_lose_their_middle_others_their_end()
    {
        Assert.Equal(
            ["roughness of grav..", "roughness of city..", "payload"],
            TextTable.Shorten(["roughness of gravel within its class", "roughness of city within its class", "payload"], 19));
        Assert.Equal(
            ["corruga..n gravel", "corruga..ashboard"],
            TextTable.Shorten(["corrugation RMS on gravel", "corrugation RMS on washboard"], 17));
    }

    private static string Shown<TPage, TResult>(IReadOnlyList<Page> pages, long evaluations)
        where TPage : StudyPage<TResult>
        where TResult : class
    {
        TPage page = pages.OfType<TPage>().Single();
        Opened.Study(page, evaluations);
        return Opened.Text(page, 80, 2_000);
    }

    /// <summary>All texts of an answer but the list of what is assumed, which has words and keys.</summary>
    private static IEnumerable<string> Told(IReadOnlyList<Block> blocks) => blocks
        .Where((b, i) => b is not ItemList || i == 0 || blocks[i - 1] is not Subheading { Text: Frame.AssumedHeading }).SelectMany(Texts);

    private static IEnumerable<string> Texts(Block block) => block switch
    {
        Paragraph p => [p.Text],
        Subheading h => [h.Text],
        Headline h => [h.Label, h.Number, .. h.Details],
        ItemList l => l.Items,
        Warning w => [Commands().Replace(w.Text, "")],
        CommandLines => [],
        Figure f => [f.Caption, f.Picture.Alternative, .. Texts(f.Picture.Chart)],
        Table t =>
        [
            t.Caption, .. t.Columns.SelectMany(c => new[] { c.Header, c.Short ?? "" }), .. t.Rows.SelectMany(r => r).Select(c => c.Text),
        ],
        _ => throw new ArgumentOutOfRangeException(nameof(block), block.GetType().Name, "a kind of block whose texts are not known"),
    };

    private static IEnumerable<string> Texts(Chart chart) => chart switch
    {
        RowsChart rows => [rows.Axis.Title, .. rows.Rows.SelectMany(r => new[] { r.Label, r.Value })],
        CurveChart curve => [curve.Across.Title, curve.Upward.Title, .. curve.MarkedLabel],
        _ => [],
    };

    /// <summary>A key of an input: a section and a key, or words joined by an underscore.</summary>
    [GeneratedRegex(@"\b(vehicle|axle|detail|bearing|use|legs|trip|fatigue)\.[a-z0-9]|[A-Za-z0-9]_[A-Za-z0-9]")]
    private static partial Regex Key();

    [GeneratedRegex(@"\([a-z]+\.[^)]*\)|(sd_ln|_ln)\b")]
    private static partial Regex Bracketed();

    [GeneratedRegex("`[^`]*`")]
    private static partial Regex Commands();
}
