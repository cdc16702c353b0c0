using System.CommandLine;
using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk compare A B ...</c>: scenarios side by side with the same random numbers.</summary>
internal static class CompareCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new CommonOptions(Comparison.DefaultEvaluations);
        var files = new Argument<string[]>("FILES")
        { Description = "two or more scenarios; the others are compared with the first", Arity = new ArgumentArity(2, 100) };
        Option<string?> distance = DistanceOption();
        Command command = new("compare",
            "two or more scenarios side by side: failure probability, B10 life and their change, with paired intervals")
        {
            files, distance, options.Evaluations, options.Seed, options.Sampling, options.Threads, options.Json, options.Csv,
        };
        command.SetAction((parsed, cancellation) =>
        {
            List<ScenarioDocument> documents = ReadAll(parsed.GetValue(files)!, parsed.GetValue(CommonOptions.DataFolders));
            double km = parsed.GetValue(distance) is { } text ? double.Parse(text) : documents[0].Scenario.RequiredKm;
            LifeModel[] models = [.. documents.Select(d => new LifeModel(d.Scenario))];
            StudySettings settings = options.Settings(parsed, defaultSampling: Comparison.DefaultSampling(models));
            (ComparisonResult result, TimeSpan elapsed) = options.Run(
                parsed, terminal, settings.Evaluations * documents.Count,
                run => Comparison.Run(models, km, settings, run).With(options.Headlines(parsed, models[0])([km], run)[0]), cancellation);
            IReadOnlyList<Assumption> assumed = CompareText.Assumed(documents);
            return Task.FromResult(new Answer(
                [
                    .. CompareText.Head(documents),
                    .. BlockLines.Of(
                    [
                        .. CompareBlocks.Of(documents, result), .. documents.SelectMany(NoteBlocks.Warnings),
                        .. documents.SelectMany(d => NoteBlocks.Sources(d.Scenario)),
                        .. NoteBlocks.Assumed(assumed),
                    ]), TextLine.Empty,
                    .. Frame.Foot(Frame.Run(result.Run, CompareText.Method(result)), Frame.Partial(result.Run), elapsed),
                ],
                () => WholeDocument.Write(
                    "compare", documents[0], CompareDocument.Form, (documents, result), (result.Run, elapsed), assumed),
                CompareDocument.Header, CompareDocument.Rows(documents, result), result.Run.IsPartial).Give(parsed, options, terminal));
        });
        return command;
    }

    /// <summary>Reads all files and reports the errors of all of them together.</summary>
    private static List<ScenarioDocument> ReadAll(string[] paths, string[]? dataFolders)
    {
        List<ScenarioDocument> documents = [];
        List<ScenarioError> errors = [];
        foreach (string path in paths)
        {
            try
            {
                documents.Add(ScenarioReader.ReadFile(path, dataFolders));
            }
            catch (ScenarioException e)
            {
                errors.AddRange(e.Errors);
            }
        }

        return errors.Count == 0 ? documents : throw new ScenarioException([.. errors.Distinct()]);
    }

    private static Option<string?> DistanceOption()
    {
        var option = new Option<string?>("--distance")
        {
            Description = "distance of the failure probabilities in km (default: the first scenario's required distance)",
            HelpName = "KM"
        };
        option.Validators.Add(result =>
        {
            string text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
            if (!(double.TryParse(text, out double km) && double.IsFinite(km) && km > 0))
            {
                result.AddError($"--distance must be a number above 0, not \"{text}\"");
            }
        });
        return option;
    }
}
