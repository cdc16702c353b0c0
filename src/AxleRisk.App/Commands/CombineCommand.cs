using System.CommandLine;
using AxleRisk.App.Documents;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk combine FILE</c>: what factors do together, and the worst combinations.</summary>
internal static class CombineCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new CommonOptions(CombineAnalysis.DefaultEvaluations);
        Command command = options.StudyCommand("combine",
            "the most dangerous combinations of factors, and what pairs do beyond what each does alone");
        command.SetAction((parsed, cancellation) =>
        {
            ScenarioDocument document = options.Read(parsed);
            var model = new LifeModel(document.Scenario);
            if (model.Factors.Factors.IsEmpty)
            {
                terminal.Error.WriteLine(
                    $"{Printable.Line(document.FileName)}: no value is uncertain, so there is nothing to combine; give at least one a distribution");
                return Task.FromResult(ExitCode.BadInput);
            }

            StudySettings settings = options.Settings(parsed);
            (CombineResult result, TimeSpan elapsed) = options.Run(
                parsed, terminal, settings.Evaluations, run =>
                {
                    RiskHeadline headline = options.HeadlineOf(parsed, model, run);
                    return CombineAnalysis.Run(model, settings, new CombineLimits(), run) with { Headline = headline };
                }, cancellation);
            return Task.FromResult(new Answer(
                [
                    .. Frame.Head(document), .. CombineText.Lines(result), .. Frame.Assumptions(document.Scenario),
                    .. Frame.Foot(result.Run, CombineText.Method(result), elapsed),
                ],
                () => CombineDocument.AddTo(Json.Head("combine", document), result).WithRun(result.Run, elapsed).WithNotes(document),
                CombineDocument.Header, CombineDocument.Rows(result), result.Run.IsPartial).Give(parsed, options, terminal));
        });
        return command;
    }
}
