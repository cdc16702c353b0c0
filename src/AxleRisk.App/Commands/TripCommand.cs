using System.CommandLine;
using AxleRisk.App.Documents;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk trip FILE</c>: whether the axle lasts the scenario's trip, at which speed and with what load.</summary>
internal static class TripCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new CommonOptions(TripAnalysis.DefaultEvaluations);
        Option<string?> target = TargetOption();
        Option<string> method = new("--method")
        { Description = "how probabilities are estimated", HelpName = "METHOD", DefaultValueFactory = _ => "auto" };
        method.AcceptOnlyFromAmong("auto", "crude");
        Command command = options.StudyCommand("trip",
            "will the axle last the trip: failure by leg, and the speed and load that keep a target");
        command.Options.Add(target);
        command.Options.Add(method);
        command.SetAction((parsed, cancellation) =>
        {
            ScenarioDocument document = options.Read(parsed);
            Scenario scenario = document.Scenario;
            if (scenario.Trip is null)
            {
                terminal.Error.WriteLine(
                    $"{Printable.Line(document.FileName)}: there is no trip; state its legs under [trip] and [[trip.legs]]");
                return Task.FromResult(ExitCode.BadInput);
            }

            var question = new TripQuestion
            {
                Target = parsed.GetValue(target) is { } text ? double.Parse(text) : null,
                IsCounted = parsed.GetValue(method) == "crude",
            };
            ScenarioDocument whole = document with { Scenario = Trip.Whole(scenario) };
            StudySettings settings = options.Settings(parsed, null, RiskAnalysis.DefaultSampling(new LifeModel(whole.Scenario)));
            bool hasTarget = (question.Target ?? scenario.Trip.TargetRisk) is not null;
            (TripResult result, TimeSpan elapsed) = options.Run(
                parsed, terminal, TripAnalysis.EvaluationsOf(scenario, settings.Evaluations, hasTarget),
                run => TripAnalysis.Run(scenario, settings, question, run), cancellation);
            return Task.FromResult(new Answer(
                [
                    .. Frame.Head(document), .. TripText.Lines(result), .. Frame.Assumptions(whole.Scenario),
                    .. Frame.Foot(result.Run, TripText.Method(result), elapsed),
                ],
                () => TripDocument.AddTo(Json.Head("trip", document), result).WithRun(result.Run, elapsed).WithNotes(whole),
                TripDocument.Header, TripDocument.Rows(result), result.Run.IsPartial).Give(parsed, options, terminal));
        });
        return command;
    }

    private static Option<string?> TargetOption()
    {
        var option = new Option<string?>("--target")
        {
            Description = "the failure probability on the trip to be kept, such as 0.02 (default: the scenario's target_risk)",
            HelpName = "P"
        };
        option.Validators.Add(result =>
        {
            string text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
            if (!(double.TryParse(text, out double p) && p > 0 && p <= 1))
            {
                result.AddError($"--target must be a number above 0 and up to 1, not \"{text}\"");
            }
        });
        return option;
    }
}
