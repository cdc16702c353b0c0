using System.Collections.Immutable;
using System.CommandLine;
using AxleRisk.App.Answers;
using AxleRisk.App.Sections;
using AxleRisk.App.Studies;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Sweeps;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk report FILE</c>: all answers in a folder to hand over.</summary>
internal static class ReportCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new CommonOptions(ReportPlan.DefaultEvaluations);
        options.Evaluations.Description =
            $"evaluations of the risk study (default {ReportPlan.DefaultEvaluations:#,0}); the other studies' are in proportion";
        var folder = new Option<string?>("--out")
        { Description = "the folder to write (default: the scenario's name with -report, here)", HelpName = "DIR" };
        Option<string[]> inputs = SweptInputs.Option("an input to be moved over a range in a section of its own; may be repeated");
        var command = new Command("report", "write a report to hand over: one page of HTML, and Markdown with pictures and tables")
        {
            options.File, folder, inputs, options.Evaluations, options.Seed, options.Threads,
        };
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(
            parsed, options, parsed.GetValue(folder), SweptInputs.Parse(parsed.GetValue(inputs) ?? []), terminal, cancellation)));
        return command;
    }

    private static int Run(
        ParseResult parsed, CommonOptions options, string? folder, ImmutableArray<SweptInput> inputs, Terminal terminal,
        CancellationToken cancellation)
    {
        string file = parsed.GetValue(options.File)!;
        ScenarioDocument document = options.Read(parsed);
        folder ??= Path.GetFileNameWithoutExtension(file) + "-report";
        try
        {
            // Before the work, not after it.
            if (WholeFolder.Refusal(folder) is { } refusal)
            {
                terminal.Error.WriteLine(
                    $"{Product.Name}: will not replace {Printable.Line(folder)}: {Printable.Line(refusal)}; name another folder with --out");
                return ExitCode.BadInput;
            }

            var model = new LifeModel(document.Scenario);
            StudySettings settings = options.Settings(parsed);
            var plan = ReportPlan.Of(model, settings.Evaluations, settings.Seed, inputs);
            ((ReportStudies studies, Report report), TimeSpan elapsed) = options.Run(
                parsed, terminal, plan.Evaluations,
                run => Write((ReportStudies)terminal.Compute(() => ReportStudies.Run(document, model, plan, run)), folder), cancellation);
            string written = $"Written to {Printable.Line(folder)}: {ReportFiles.Page} (needs no other file), "
                + $"{ReportFiles.Markdown}, {report.Pictures.Count()} pictures, {report.Files.Length} tables.";
            foreach (TextLine line in (TextLine[])
                [
                    .. Frame.Head(document),
                    .. BlockLines.Of(
                    [
                        RiskBlocks.Headline(studies.Risk),
                        .. studies.LeftOut.Select(l => new Warning(LeftOutText.Told(l.Title, l.Reason))), new Paragraph(written),
                    ]),
                    Frame.Took(elapsed), .. Frame.CautionLines,
                ])
            {
                terminal.Out.WriteLine(Style.Print(line));
            }

            return ExitCode.Done;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            terminal.Error.WriteLine($"{Product.Name}: cannot write {Printable.Line(folder)}: {Printable.Line(e.Message)}");
            return ExitCode.Failed;
        }
    }

    private static (ReportStudies Studies, Report Report) Write(ReportStudies studies, string folder) =>
        (studies, ReportFiles.Write(studies, folder));
}
