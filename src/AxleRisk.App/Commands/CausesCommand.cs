using System.Collections.Immutable;
using System.CommandLine;
using AxleRisk.App.Documents;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk causes FILE</c>: what a failure, or none, says of the factors and of named explanations.</summary>
internal static class CausesCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new CommonOptions(CausesAnalysis.DefaultEvaluations);
        var evidence = new EvidenceOptions();
        Command command = options.StudyCommand("causes", "what a failure says of its causes, from the evidence found");
        evidence.AddTo(command);
        command.SetAction((parsed, cancellation) =>
        {
            ScenarioDocument document = options.Read(parsed);
            var model = new LifeModel(document.Scenario);
            StudySettings settings = options.Settings(parsed);
            (CausesResult result, TimeSpan elapsed) = options.Run(
                parsed, terminal, settings.Evaluations,
                run =>
                {
                    Evidence found = evidence.Apply(parsed, document.Scenario.Evidence);
                    ImmutableArray<RiskHeadline> headlines = options.Headlines(parsed, model, found.Life?.DistancesKm ?? [], run);
                    return CausesAnalysis.Run(model, found, settings, run).With(headlines);
                }, cancellation);
            return Task.FromResult(new Answer(
                [
                    .. Frame.Head(document), .. CausesText.Lines(result), .. Frame.Assumptions(document.Scenario),
                    .. Frame.Foot(result.Run, CausesText.Method(result), elapsed),
                ],
                () => CausesDocument.AddTo(Json.Head("causes", document), result).WithRun(result.Run, elapsed).WithNotes(document),
                CausesDocument.Header, CausesDocument.Rows(result), result.Run.IsPartial).Give(parsed, options, terminal));
        });
        return command;
    }
}
