using System.Collections.Immutable;
using System.CommandLine;
using AxleRisk.App.Documents;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk fleet FILE</c>: a fleet's warranty claims and what would meet its targets.</summary>
internal static class FleetCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new CommonOptions(FleetAnalysis.DefaultEvaluations);
        options.Evaluations.Description =
            $"evaluations of the fleet's sample (default {FleetAnalysis.DefaultEvaluations:#,0}); each design takes a quarter more";
        Command command = options.StudyCommand("fleet",
            "a fleet under warranty: claims and their cost, the longest warranty, the designs that meet a B life");
        command.SetAction((parsed, cancellation) =>
        {
            ScenarioDocument document = options.Read(parsed);
            if (document.Scenario.Fleet is not { } fleet)
            {
                terminal.Error.WriteLine($"{Printable.Line(document.FileName)}: there is no fleet; state one under [fleet]");
                return Task.FromResult(ExitCode.BadInput);
            }

            StudySettings settings = options.Settings(parsed, defaultSampling: FleetAnalysis.DefaultSampling);
            (FleetResult result, TimeSpan elapsed) = options.Run(
                parsed, terminal, FleetAnalysis.ExpectedEvaluations(fleet, settings.Evaluations),
                run =>
                {
                    var model = new LifeModel(document.Scenario);
                    ImmutableArray<RiskHeadline> headline = options.Headlines(parsed, model, fleet.TargetKm, run);
                    return FleetAnalysis.Run(model, settings, run) with { Headline = headline.FirstOrDefault() };
                }, cancellation);
            return Task.FromResult(new Answer(
                [
                    .. Frame.Head(document), .. FleetText.Lines(result), .. Frame.Assumptions(document.Scenario),
                    .. Frame.Foot(result.Run, FleetText.Method(result.Sampling), elapsed),
                ],
                () => FleetDocument.AddTo(Json.Head("fleet", document), result).WithRun(result.Run, elapsed).WithNotes(document),
                FleetDocument.Header, FleetDocument.Rows(result), result.Run.IsPartial).Give(parsed, options, terminal));
        });
        return command;
    }
}
