using AxleRisk.App.Studies;
using AxleRisk.App.Text;
using AxleRisk.Core.Studies;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>What it takes to repeat the report: scenario, version, seed and the commands that give the same figures.</summary>
internal static class RepeatSection
{
    private const string Harmless = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789./_-";

    public static Section Of(ReportStudies studies, IEnumerable<string> files)
    {
        string scenario = ReportFiles.CopyOf(studies.Document);
        return new Section(
            "To repeat it",
            [
                new ItemList(
                [
                    $"Scenario: {studies.Document.FileName}; as it was read, with its data files, it is {scenario} in the folder that this report was written to",
                    $"Digest of the scenario and its data files (SHA-256): {studies.Document.Digest}",
                    $"{Product.Name} {Product.Version}, damage model version {LifeModel.Version}",
                ]),
                StudyTable(studies.Made.Select(m => m.Step)).Captioned("The studies behind this report"),
                new Paragraph(
                    $"In that folder the first command writes the report again ({ReportFiles.Repeat} holds it too), and the second shows the digest, to tell that the scenario is still the same; "
                        + "each of the others gives the figures of one section, with more detail:"),
                new CommandLines(
                [
                    Command(studies),
                    $"{Product.Name} check {Quoted(scenario)}",
                    $"{Product.Name} base {Quoted(scenario)}",
                    .. studies.Made.Select(m => CommandLine(m.Step.Command, scenario, m.Step.Settings, m.Step.IsUsual, m.Step.Arguments)),
                ]),
                new Paragraph("The same scenario, seed and version give the same figures on any number of threads; no text of this report depends on the time or the machine."),
                new Paragraph("In the folder, files.csv lists all files with their digests. Figures to full precision are in tables; json has what each command prints with --json, without the time it took:"),
                new ItemList(
                [
                    .. files.Select(f => $"tables/{f}.csv"),
                    .. ReportComposer.Documents(studies).Select(d => $"json/{d.Name}.json"),
                    .. studies.Document.Sources.Skip(1).Select(f => $"scenario/{f.Name}, a data file of the scenario"),
                ]),
            ]);
    }

    /// <summary>What writes the report again, in the folder that it was written to.</summary>
    public static string Command(ReportStudies studies) =>
        CommandLine("report", ReportFiles.CopyOf(studies.Document), studies.Plan.Risk, arguments: studies.Plan.Arguments + " --out ../repeated");

    private static TextTable StudyTable(IEnumerable<StudyStep> made)
    {
        var table = new TextTable("study", "evaluations asked for", "cases", "seed", "<sampling");
        foreach (StudyStep step in made)
        {
            table.Add(
                step.Command, (step.IsUsual ? "at most " : "") + Figures.Count(step.Settings.Evaluations), Figures.Count(step.Cases),
                    step.Settings.Seed.ToString(), step.Settings.Sampling);
        }

        return table;
    }

    private static string CommandLine(
        string command, string scenario, StudySettings settings, bool isUsual = false, string arguments = "") =>
        $"{Product.Name} {command} {Quoted(scenario)}{arguments}{(isUsual ? "" : $" --evaluations {settings.Evaluations}")} --seed {settings.Seed}";

    /// <summary>A file's name as a POSIX shell takes it.</summary>
    private static string Quoted(string name) =>
        name.All(Harmless.Contains) && !name.StartsWith('-') ? name : $"'{name.Replace("'", "'\\''", StringComparison.Ordinal)}'";
}
