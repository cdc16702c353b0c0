using System.Collections.Immutable;
using System.Text.Json.Nodes;
using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Studies;
using AxleRisk.App.Text;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>Puts the sections of a report in order, and the tables that go with it.</summary>
internal static class ReportComposer
{
    public static Report Compose(ReportStudies studies)
    {
        DataFile[] files = [.. Files(studies)];
        return Report.Of(Printable.Line(studies.Document.Scenario.Title), Sections(studies, files.Select(f => f.Name)), files);
    }

    private static IEnumerable<Section> Sections(ReportStudies studies, IEnumerable<string> files) =>
        [
            SummarySection.Of(studies),
            InputsSection.Of(studies),
            new Section("Base case, and one factor at a time", [.. BaseBlocks.Of(studies.Base)]),
            .. studies.Plan.Steps.Select(step => SectionOf(studies, step)),
            ClosingSections.Method(studies.Risk),
            ClosingSections.Cautions,
            RepeatSection.Of(studies, files),
        ];

    /// <summary>What a study says; or in its place, that it was not made, and why.</summary>
    private static Section SectionOf(ReportStudies studies, StudyStep step) => new(
        step.Study.Title,
        studies.Made.FirstOrDefault(m => m.Step == step) is { } made
            ?
            [
                .. made.Blocks, new Paragraph(made.RunInWords),
                .. step.Study is CausesStudy ? EvidenceInputs.ToSign(studies.Document.Scenario) : [],
            ]
            : [new Warning(LeftOutText.InSection(studies.LeftOut.First(l => l.Step == step).Reason))]);

    private static IEnumerable<DataFile> Files(ReportStudies studies) =>
    [
        File("inputs", CheckDocument.Header, CheckDocument.Rows(studies.Model.Factors)),
        File("base", BaseDocument.Header, BaseDocument.Rows(studies.Base)),
        .. studies.Made.Select((m, i) => File(NameOf(studies, i), m.Header, m.Rows)),
        File("curve", RiskDocument.Header, RiskDocument.CurveRows(studies.Find<RiskRun>()!.Curve!)),
    ];

    /// <summary>
    /// What each command behind the report prints with <c>--json</c>, without the time it took, by its name among the files.
    /// </summary>
    public static IEnumerable<(string Name, JsonObject Document)> Documents(ReportStudies studies) =>
    [
        ("check", CheckDocument.Of(studies.Document, studies.Model.Factors)), ("base", BaseDocument.Of(studies.Document, studies.Base)),
        .. studies.Made.Select((m, i) => (NameOf(studies, i), m.Document)),
    ];

    /// <summary>The name of a study among the report's files; a command that is run more than once is numbered.</summary>
    public static string NameOf(ReportStudies studies, int place)
    {
        string command = studies.Made[place].Step.Command;
        int before = studies.Made.Take(place).Count(m => m.Step.Command == command);
        return before == 0 ? command : $"{command}-{before + 1}";
    }

    private static DataFile File(string name, string[] header, IEnumerable<string[]> rows) =>
        new(name, [.. header], [.. rows.Select(r => r.ToImmutableArray())]);
}
