using System.CommandLine;
using System.Text;
using AxleRisk.App.Studies;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk learn FILES</c>: what the data teach; of several scenarios also which one they support.</summary>
internal static class LearnCommand
{
    public static Command Create(Terminal terminal)
    {
        LearnStudy study = StudyBook.Learn;
        var options = new CommonOptions(study.DefaultEvaluations);
        var files = new Argument<string[]>("FILES")
        { Description = "the scenario; further ones are weighed against it by the same data", Arity = new ArgumentArity(1, 20) };
        var output = new OutputFile("--out")
        { Description = "write the scenario with what it has learned to this file, beside it NAME.sample.csv", HelpName = "FILE.toml" };
        QuestionOptions<LearnQuestion> own = study.Options();
        var command = new Command(study.Name, study.About)
        {
            files, options.Evaluations, options.Seed, options.Threads, options.Json, options.Csv, output,
        };
        Array.ForEach(own.Options, command.Add);
        command.SetAction((parsed, cancellation) =>
        {
            ScenarioDocument[] documents = [.. parsed.GetValue(files)!.Select(f =>
                ScenarioReader.ReadFile(f, parsed.GetValue(CommonOptions.DataFolders)))];
            string? path = parsed.GetValue(output);
            LearnQuestion question = own.Ask(parsed, new LearnQuestion([])) with { Keeps = path is not null };
            if (documents.FirstOrDefault(d => study.WhyNot(d.Scenario, question) is not null) is { } without)
            {
                terminal.Error.WriteLine($"{Printable.Line(without.FileName)}: {study.WhyNot(without.Scenario, question)}");
                return Task.FromResult(ExitCode.BadInput);
            }

            RefuseOtherData(documents);
            StudySettings settings = options.Settings(parsed);
            (LearnResult result, TimeSpan elapsed) = options.Run(
                parsed, terminal, settings.Evaluations * documents.Length, run => Learn(documents, question, settings, run), cancellation);
            string? trouble = path is null ? null : Write(path, documents[0], result, parsed.GetValue(CommonOptions.DataFolders));
            return Task.FromResult(StudyCommand.AnswerOf(study, documents[0], result, elapsed).Give(parsed, options, terminal, trouble));
        });
        return command;
    }

    private static LearnResult Learn(ScenarioDocument[] documents, LearnQuestion question, StudySettings settings, RunOptions options)
    {
        LearnResult Of(ScenarioDocument document, bool first) => LearnAnalysis.Run(
            new LifeModel(document.Scenario), first ? question : question with { Keeps = false }, settings, options);
        LearnResult result = Of(documents[0], first: true);
        return result with
        {
            Rivals =
            [
                .. documents.Skip(1).Select(d =>
                {
                    LearnResult other = Of(d, first: false);
                    Interval a = result.LogMarginalLikelihood, b = other.LogMarginalLikelihood;
                    double half = Math.Sqrt(Math.Pow((a.High - a.Low) / 2, 2) + Math.Pow((b.High - b.Low) / 2, 2));
                    double ln = a.Estimate - b.Estimate;
                    return new RivalScenario(
                        d.FileName, b, new Interval(Math.Exp(ln), Math.Exp(ln - half), Math.Exp(ln + half)), other.Misfit.IsMisfit);
                }),
            ],
        };
    }

    // A marginal likelihood tells of scenarios only where the data are the same.
    private static void RefuseOtherData(ScenarioDocument[] documents)
    {
        static (string, string) Of(ScenarioDocument d) => (d.Scenario.Field.Digest, d.Scenario.Gauges.Digest);
        if (documents.FirstOrDefault(d => Of(d) != Of(documents[0])) is { } other)
        {
            throw new StudyException(
                $"{other.FileName} has other data than {documents[0].FileName}: scenarios can be weighed against each other by the same data alone");
        }
    }

    private static string? Write(string path, ScenarioDocument document, LearnResult result, string[]? dataFolders)
    {
        LearnedShape shape = result.Shape!;
        string text = LearnedText.Of(document.Text, document.Scenario, shape.Learned);
        try
        {
            // Where it is to stand its data files must be found.
            _ = ScenarioReader.ParseFor(text, path, dataFolders);
        }
        catch (ScenarioException e)
        {
            return $"cannot write {Printable.Line(path)}: {Printable.Line(e.Errors[0].ToString())}; write it beside the scenario";
        }

        return OutputFile.Trouble(path, p => WholeFile.Write(p, Encoding.UTF8.GetBytes(text)))
            ?? OutputFile.Trouble(Path.ChangeExtension(path, ".sample.csv"), p => TableFile.Write(
                p, [.. shape.Columns], shape.Sample.Select(row => (string[])[.. row.Select(x => x.ToString("R"))])));
    }
}
