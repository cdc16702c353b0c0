using System.CommandLine;
using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Fits;
using AxleRisk.Core.Studies;
using AxleRisk.Files.Tables;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk fit FILE.csv --column NAME</c>: distributions fitted to measured values.</summary>
internal static class FitCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new CommonOptions(null);
        var file = new Argument<string>("FILE.csv") { Description = "a CSV file whose first line names its columns" };
        Option<string> column = new("--column") { Description = "the column of the values", HelpName = "NAME", Required = true };
        Option<string?> above = Named("--above", "a column with what a value lies above where its own cell is empty");
        Option<string?> below = Named("--below", "a column with what such a value lies below; with both it lies between");
        Option<string?> count = Named("--count", "a column with how many such values there are");
        var command = new Command("fit", "distributions fitted to measured values, and the line for the scenario")
        {
            file, column, above, below, count, options.Seed, options.Threads, options.Json, options.Csv,
        };
        command.SetAction((parsed, cancellation) =>
        {
            MeasuredTable table = MeasuredTable.Read(parsed.GetValue(file)!, new MeasuredColumns(
                parsed.GetValue(column)!, parsed.GetValue(above), parsed.GetValue(below), parsed.GetValue(count)));
            ulong seed = parsed.GetValue(options.Seed) is { } s ? ulong.Parse(s) : StudySettings.DefaultSeed;
            (FitResult result, TimeSpan elapsed) = options.Run(
                parsed, terminal, 1, run => FitAnalysis.Run(table.Observations, seed, run), cancellation);
            return Task.FromResult(new Answer(
                [
                    .. FitText.Head(table), .. BlockLines.Of(FitBlocks.Of(table, result)), TextLine.Empty,
                    .. Frame.Foot(FitText.Run(result), null, elapsed),
                ],
                () => FitDocument.Form.Write((table, result, elapsed)), FitDocument.Header, FitDocument.Rows(result))
                .Give(parsed, options, terminal));
        });
        return command;
    }

    private static Option<string?> Named(string name, string description) => new(name) { Description = description, HelpName = "NAME" };
}
