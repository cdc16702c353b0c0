using System.CommandLine;
using AxleRisk.App.Documents;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk remedies FILE</c>: what each remedy of a scenario and each pair of them would do.</summary>
internal static class RemediesCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new CommonOptions(Comparison.DefaultEvaluations);
        Command command = options.StudyCommand("remedies",
            "the scenario's remedies, alone and in pairs: failure probability, B10 life and their change");
        command.SetAction((parsed, cancellation) =>
        {
            ScenarioDocument document = options.Read(parsed);
            if (document.Scenario.Remedies.IsEmpty)
            {
                terminal.Error.WriteLine(
                    $"{Printable.Line(document.FileName)}: there are no remedies to compare; state at least one under [[remedies]]");
                return Task.FromResult(ExitCode.BadInput);
            }

            var model = new LifeModel(document.Scenario);
            StudySettings settings = options.Settings(parsed, defaultSampling: RemediesAnalysis.DefaultSampling(model));
            (RemediesResult result, TimeSpan elapsed) = options.Run(
                parsed, terminal, settings.Evaluations * RemediesAnalysis.CasesOf(document.Scenario),
                run =>
                {
                    RiskHeadline headline = options.HeadlineOf(parsed, model, run);
                    return RemediesAnalysis.Run(model, settings, run).With(headline);
                }, cancellation);
            return Task.FromResult(new Answer(
                [
                    .. Frame.Head(document), .. RemediesText.Lines(document.Scenario, result), .. Frame.Assumptions(document.Scenario),
                    .. Frame.Foot(result.Comparison.Run, CompareText.Method(result.Comparison), elapsed),
                ],
                () => RemediesDocument.AddTo(Json.Head("remedies", document), result).WithRun(result.Comparison.Run, elapsed)
                    .WithNotes(document),
                RemediesDocument.Header, RemediesDocument.Rows(result), result.Comparison.Run.IsPartial).Give(parsed, options, terminal));
        });
        return command;
    }
}
