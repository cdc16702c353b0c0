using AxleRisk.App.Answers;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Sections;
using AxleRisk.App.Text;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Screens.Pages;

/// <summary>Writes the report to hand over, of the scenario as it stands.</summary>
internal sealed class ReportPage(Session session, IDialogs dialogs) : StudyPage<WrittenReport>(session, dialogs)
{
    private string? folder;
    private long evaluations = ReportPlan.DefaultEvaluations;

    public override string Name => "Report";

    public override string ShortName => "Rep";

    public override IReadOnlyList<string> Explanation =>
    [
        "Writes a folder to hand over: one page of HTML that needs no other file, the same as Markdown with pictures, and every table as CSV.",
        "It holds the answers that the scenario gives reason for: base case and risk; ranking and combinations where anything is uncertain; causes where there is evidence; remedies, trip and fleet where they are stated. A study that has no answer to the scenario is left out, and the report says so in its place.",
        "The studies are run anew, of the scenario as it stands here, saved or not. Save first: the report names the file and its digest, and whoever repeats it needs that file.",
        "Nothing is written until all studies are done, and then the whole folder at once. A folder with files that are no unchanged report is never replaced.",
    ];

    public override IReadOnlyList<KeyHint> Keys => Run.Standing.Phase switch
    {
        RunPhase.Running => [new("s", "stop", KeyWorth.Main), new("f", "give up")],
        RunPhase.Stopped => [new("s", "continue", KeyWorth.Main), new("f", "give up")],
        _ => [new("r", Run.Result is null ? "write a report" : "write another", KeyWorth.Main)],
    };

    public override PageLine Status => Run.Standing switch
    {
        { Phase: RunPhase.Idle } when Run.Result is null => PageLine.Of("Not written yet. r asks where to.", Ink.Quiet),
        { Phase: RunPhase.Failed, Failure: var why } => PageLine.Of($"Nothing was written: {why}", Ink.Warning),
        { Phase: RunPhase.Idle or RunPhase.Done } when IsOutOfDate =>
            PageLine.Of("OUT OF DATE: the scenario was changed after this report. r writes another.", Ink.Warning),
        _ => base.Status,
    };

    /// <summary>A report tells the title too, and the digest of the text.</summary>
    protected override int State => Session.Edition;

    protected override long DefaultEvaluations => evaluations;

    protected override string Invitation =>
        $"Writes the answers to this scenario into a folder to hand over ({string.Join(", ", Plan(Session.Model).Steps.Select(s => s.Command))}): "
        + "one page of HTML, and Markdown with pictures and tables. Press r to choose the folder.";

    private ReportPlan Plan(LifeModel model) => ReportPlan.Of(model, evaluations, Session.Seed);

    public override bool Press(PageKey key) => key.Character != 'e' && base.Press(key);

    public override void Start()
    {
        var form = new ReportForm(folder ?? Path.GetFileNameWithoutExtension(Session.Document.FileName) + "-report", evaluations);
        if (Run.Standing.Phase is RunPhase.Running or RunPhase.Stopped || !Dialogs.Fill(form))
        {
            return;
        }

        (folder, evaluations) = (form.Folder, form.Evaluations);
        string place = Path.GetFullPath(folder);
        (ScenarioDocument document, LifeModel model) = (Session.Document, Session.Model);
        ReportPlan plan = Plan(model);
        Run.Start(State, plan.Evaluations, (options, _) => Write(document, model, plan, place, options));
    }

    protected override WrittenReport Study(LifeModel model, StudySettings settings, RunOptions options, Action<WrittenReport> publish) =>
        throw new NotSupportedException("the report is started with its folder");

    protected override IReadOnlyList<PageLine> Show(WrittenReport written, int width, int height)
    {
        int room = Math.Min(width, Layout.Width) - 2;
        return
        [
            PageLine.Empty,
            PageLine.Of("Written to", Ink.Heading), .. Wrapped(Printable.Line(written.Folder), room), PageLine.Empty,
            PageLine.Of(new Piece($"  {ReportFiles.Page,-13}", Ink.Strong), new Piece("the whole report; needs no other file")),
            PageLine.Of(new Piece($"  {ReportFiles.Markdown,-13}", Ink.Strong),
                new Piece($"the same as Markdown, with {written.Pictures} pictures")),
            PageLine.Of(new Piece($"  {"tables",-13}", Ink.Strong), new Piece($"{written.Tables} tables as CSV")), PageLine.Empty,
            .. Wrapped($"Studies in it: {string.Join(", ", written.Studies)}.", room), PageLine.Empty,
            .. written.LeftOut.SelectMany(l => Wrapped(LeftOutText.Told(l.Title, l.Reason), room).Select(w => w.In(Ink.Warning))
                .Append(PageLine.Empty)),
            .. PageLine.Of([RiskBlocks.Headline(written.Risk), new Paragraph(Caution.Sentence)], width),
        ];
    }

    private static WrittenReport Write(ScenarioDocument document, LifeModel model, ReportPlan plan, string place, RunOptions options)
    {
        var studies = ReportStudies.Run(document, model, plan, options);
        Report report = ReportFiles.Write(studies, place);
        return new WrittenReport(place, [.. studies.Made.Select(m => m.Step.Command)], studies.LeftOut, report.Pictures.Count(),
            report.Files.Length, studies.Risk);
    }

    private static IEnumerable<PageLine> Wrapped(string text, int room) => Wrap.Lines(text, room, "").Select(l => PageLine.Of("  " + l));
}
