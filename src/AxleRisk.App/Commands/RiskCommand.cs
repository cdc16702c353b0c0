using System.Collections.Immutable;
using System.CommandLine;
using AxleRisk.App.Documents;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk risk FILE</c>: the failure probability over distance and the lives.</summary>
internal static class RiskCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new CommonOptions(RiskAnalysis.DefaultEvaluations);
        var method = new Option<string>("--method")
        {
            Description = "how probabilities are estimated",
            HelpName = "METHOD",
            DefaultValueFactory = _ => "auto",
        };
        method.AcceptOnlyFromAmong("auto", "crude", "conditional");
        Option<string?> distances = DistancesOption();
        Command command = options.StudyCommand("risk", "the failure probability over distance, and the B1, B5, B10 and B50 lives");
        command.Options.Add(method);
        command.Options.Add(distances);
        command.SetAction((parsed, cancellation) =>
        {
            ScenarioDocument document = ScenarioReader.ReadFile(parsed.GetValue(options.File)!);
            var model = new LifeModel(document.Scenario);
            StudySettings settings = options.Settings(parsed);
            long start = terminal.Clock.GetTimestamp();
            RiskResult result;
            using (var progress = new ProgressLine(terminal, settings.Evaluations))
            {
                result = RiskAnalysis.Run(
                    model, settings, Enum.Parse<RiskMethod>(parsed.GetValue(method)!, ignoreCase: true),
                    Distances(parsed.GetValue(distances)), options.Run(parsed, progress, cancellation));
            }

            TimeSpan elapsed = terminal.Clock.GetElapsedTime(start);
            return Task.FromResult(new Answer(
                [
                    .. Frame.Head(document), .. RiskText.Lines(result), .. Frame.Assumptions(document.Scenario),
                    .. Frame.Foot(result.Run, RiskText.Method(result), elapsed),
                ],
                () => RiskDocument.AddTo(Json.Head("risk", document), result).WithRun(result.Run, elapsed).WithNotes(document),
                RiskDocument.Header, RiskDocument.Rows(result), result.Run.IsPartial).Give(parsed, options, terminal));
        });
        return command;
    }

    private static Option<string?> DistancesOption()
    {
        var option = new Option<string?>("--distances")
        {
            Description = "distances of the table in km, separated by commas",
            HelpName = "KM,KM,...",
        };
        option.Validators.Add(result =>
        {
            string text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
            foreach (string part in text.Split(','))
            {
                if (!double.TryParse(part, out double km) || !double.IsFinite(km) || !(km > 0))
                {
                    result.AddError($"--distances must be numbers above 0 separated by commas, not \"{text}\"");
                    return;
                }
            }
        });
        return option;
    }

    private static ImmutableArray<double> Distances(string? text) => text is null ? [] : [.. text.Split(',').Select(double.Parse)];
}
