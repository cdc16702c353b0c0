using System.CommandLine;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk merge PARTS...</c>: joins the parts of a risk study to the whole, to the same digits as one run.</summary>
internal static class MergeCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new CommonOptions(null);
        var own = new RiskOptions();
        var files = new Argument<string[]>("PARTS")
        { Description = "the files written by risk --part K/M --out FILE", Arity = ArgumentArity.OneOrMore };
        var scenario = new Option<string?>("--scenario") { Description = "the scenario, where it has moved since", HelpName = "FILE" };
        var command = new Command("merge", "join the parts of a risk study")
            { files, scenario, own.Method, own.Distances, options.Json, options.Csv };
        command.SetAction(parsed =>
        {
            long start = terminal.Clock.GetTimestamp();
            List<(string Path, PartFile Part)> parts = [.. parsed.GetValue(files)!.Select(path => (path, PartFile.Read(path)))];
            CheckBelongTogether(parts);
            ScenarioDocument document = ScenarioReader.ReadFile(
                parsed.GetValue(scenario) ?? parts[0].Part.Scenario, parsed.GetValue(CommonOptions.DataFolders));
            if (document.Digest != parts[0].Part.Digest)
            {
                throw new StudyException(
                    $"{document.FileName} has changed since {parts[0].Path} was written: run the parts again, or name the old file with --scenario");
            }

            var model = new LifeModel(document.Scenario);
            RiskState whole = RiskAnalysis.Join([.. parts.Select(p => p.Part.CheckedState(p.Path, model))]);
            var question = new RiskQuestion
            {
                Method = own.Question(parsed).Method,
                DistancesKm = own.Question(parsed).DistancesKm,
            };
            RiskResult result = RiskAnalysis.Summarise(model, whole, question, new RunOptions(), isPartial: false);
            return StudyCommand
                .AnswerOf(StudyBook.Risk, document, new RiskRun(result, whole), terminal.Clock.GetElapsedTime(start), "merge")
                .Give(parsed, options, terminal);
        });
        return command;
    }

    /// <summary>Refuses parts of different studies, unfinished ones, and sets with a part twice or missing, naming the file.</summary>
    private static void CheckBelongTogether(List<(string Path, PartFile Part)> parts)
    {
        (string firstPath, PartFile first) = parts[0];
        foreach ((string path, PartFile part) in parts)
        {
            string? fault =
                part.Digest != first.Digest ? "is of another scenario than"
                : part.ModelVersion != first.ModelVersion || part.Version != first.Version ? "is of another version than"
                : part.State.Settings != first.State.Settings ? "has other settings (evaluations, seed or sampling) than"
                : null;
            if (fault is not null)
            {
                throw new StudyException($"{path} {fault} {firstPath}");
            }

            if (part.ModelVersion != LifeModel.Version)
            {
                throw new StudyException(
                    $"{path} was written by model {part.ModelVersion}, and this program has model {LifeModel.Version}: run the parts again");
            }

            if (!part.State.IsFinished)
            {
                throw new StudyException($"{path} is not finished: run it again with --resume");
            }
        }

        long next = 0;
        foreach ((string path, PartFile part) in parts.OrderBy(p => p.Part.State.FirstBlock).ThenBy(p => p.Part.State.EndBlock))
        {
            if (part.State.FirstBlock != next)
            {
                throw new StudyException(part.State.FirstBlock < next
                    ? $"{path} overlaps another part: give each part once"
                    : $"a part is missing before {path}: blocks {next} to {part.State.FirstBlock - 1}");
            }

            next = part.State.EndBlock;
        }

        long blocks = RiskAnalysis.BlocksOf(first.State.Settings);
        if (next != blocks)
        {
            throw new StudyException($"a part is missing at the end: blocks {next} to {blocks - 1}");
        }
    }
}
