using AxleRisk.App.Answers;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Pages.Remedies;
using AxleRisk.App.Sections;
using AxleRisk.App.Studies;
using AxleRisk.App.Tests.Screens;
using AxleRisk.App.Tests.Screens.Pages;
using AxleRisk.App.Text;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;
using Xunit;

namespace AxleRisk.App.Tests.Answers;

/// <summary>
/// What a command prints in headings, warnings and assumptions stands on the page of its study and in its section of a report.
/// </summary>
public sealed class ParityTests
{
    // Fewer have no answer for the evidence of the shipped scenarios.
    private static long Few(string study) => study == StudyBook.Learn.Name ? 65_536 : study == StudyBook.Causes.Name ? 16_384
        : study is "trip" or "inspect" ? 512 : 2_048;

    /// <summary>What a page leaves out, and why.</summary>
    private static readonly (string Study, string Heading, string Why)[] NotOnThePage =
    [
        ("rank", "Failure probability by", "the page begins with the bars; t shows what the command prints"),
        ("rank", "Share of failure by", "the page draws these shares as bars with a row to choose; t shows the table"),
        ("rank", "Failure before that distance", "a sentence of the chosen factor tells them; t shows the table"),
        ("rank", "Spread of life, factor by factor", "a sentence of the chosen factor tells them; t shows the table"),
        ("rank", "Failure probability with one factor held", "a sentence of the chosen factor tells it; t shows the table"),
        ("remedies", "Failure probability by", "the page compares the remedies that are switched on, and draws each alone"),
        ("remedies", "B10 life, the distance", "the page tells the B10 life of those that are switched on"),
        ("remedies", "The remedy", "the page draws each remedy alone with its ratio"),
        ("remedies", "The remedies", "the page lists them with their switches"),
    ];

    public static TheoryData<string> Shipped => ["warranty-clinic-van", "desert-crossing", "broken-housing", "quarry-shuttle"];

    [Theory]
    [MemberData(nameof(Shipped))]
    public void The_console_shows_what_the_commands_print(string scenario)
    {
        using Session session = Opened.Session(scenario);
        IReadOnlyList<Page> pages = PageBook.Of(session, new NoDialogs());
        try
        {
            IStudy[] studies = [.. StudyBook.All.Where(s => s.WhyNot(session.Document.Scenario) is null)];
            Assert.Contains(StudyBook.Risk, studies);
            Patience.Until(session.Risk.Run.Completion);
            var onPage = new OnPage(session, pages);
            Assert.All(studies, study => study.Accept(onPage));
        }
        finally
        {
            foreach (IDisposable page in pages.OfType<IDisposable>())
            {
                page.Dispose();
            }
        }
    }

    [Theory]
    [MemberData(nameof(Shipped))]
    public void A_report_tells_what_the_commands_print(string scenario)
    {
        ReportStudies studies = ShippedReports.Studies(scenario);
        ScenarioDocument document = studies.Document;
        Report report = ReportComposer.Compose(studies);
        Assert.NotEmpty(studies.Made);
        (string summary, string inputs) = (Words(report.Sections[0].Blocks), Words(report.Sections[1].Blocks));
        foreach (MadeStudy made in studies.Made)
        {
            string section = Words(report.Sections.Single(s => s.Title == made.Step.Study.Title).Blocks) + inputs;
            Block[] printed = [.. made.Step.Study.Accept(new Printed(document, made.Result))];
            Assert.NotEmpty(Headings(printed));
            Assert.All(Headings(printed), h => Assert.Contains(h, section, StringComparison.Ordinal));
            Assert.All(Assumptions(printed), a => Assert.Contains(a, section, StringComparison.Ordinal));
            Assert.All(Warnings(printed), w => Assert.Contains(w, summary + section, StringComparison.Ordinal));
        }
    }

    private static IEnumerable<string> Headings(IEnumerable<Block> blocks) => blocks
        .Select(b => b switch { Subheading h => h.Text, Table t => t.Caption, Headline h => h.Label, _ => "" })
        .Where(t => t.Length > 0).Select(Flat);

    private static IEnumerable<string> Warnings(IEnumerable<Block> blocks) => blocks.OfType<Warning>().Select(w => Flat(w.Text));

    private static IEnumerable<string> Assumptions(IReadOnlyList<Block> blocks) =>
        blocks.SkipWhile(b => b is not Subheading { Text: Frame.AssumedHeading }).OfType<ItemList>().Take(1)
            .SelectMany(l => l.Items).Select(Flat);

    private static string Words(IEnumerable<Block> blocks) => Flat(string.Join('\n', BlockLines.Of(blocks, 10_000).Select(l => l.Text)));

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>What the command of a study prints of a result.</summary>
    private sealed class Printed(ScenarioDocument document, object result) : IStudyVisitor<IEnumerable<Block>>
    {
        public IEnumerable<Block> Visit<TQuestion, TResult>(Study<TQuestion, TResult> study)
            where TResult : class => [.. study.Blocks(document, (TResult)result), .. study.Notes(document)];
    }

    /// <summary>Looks on the page of a study for what its command prints.</summary>
    private sealed class OnPage(Session session, IReadOnlyList<Page> pages) : IStudyVisitor<bool>
    {
        public bool Visit<TQuestion, TResult>(Study<TQuestion, TResult> study)
            where TResult : class
        {
            StudyPage<TResult>? own = pages.OfType<StudyPage<TResult>>().FirstOrDefault();
            if (own is not null)
            {
                Opened.Study(own, Few(study.Name));
            }

            var settings = new StudySettings(Few(study.Name), session.Seed, study.Sampling(session.Model));
            TResult result = own?.Run.Result ?? study.Run(
                session.Model, settings, study.Usual(session.Document.Scenario, true), session.Risk.Headlines(session.Model),
                new RunOptions());
            Block[] printed = [.. study.Blocks(session.Document, result), .. study.Notes(session.Document)];
            string page = Flat(TextOf(own, Few(study.Name)));
            IEnumerable<string> missing = Headings(printed).Concat(Warnings(printed)).Concat(Assumptions(printed))
                .Where(text => !page.Contains(text, StringComparison.Ordinal));
            Assert.All(missing, text => Assert.Contains(
                NotOnThePage, n => n.Study == study.Name && text.StartsWith(n.Heading, StringComparison.Ordinal)));
            return true;
        }

        private string TextOf<TResult>(StudyPage<TResult>? page, long few)
            where TResult : class
        {
            // The risk follows every edit by itself, and the remedies' page has a result of its own.
            if (page is not null)
            {
                return Opened.Text(page, 80, 2_000);
            }

            if (typeof(TResult) == typeof(RiskRun))
            {
                RiskPage risk = pages.OfType<RiskPage>().Single();
                Patience.Until(risk.Run.Completion);
                return Opened.Text(risk, 80, 2_000);
            }

            RemediesPage remedies = pages.OfType<RemediesPage>().Single();
            Opened.Study(remedies, few);
            return Opened.Text(remedies, 80, 2_000);
        }
    }
}
