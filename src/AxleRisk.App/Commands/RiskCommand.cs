using System.CommandLine;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk risk FILE</c>: the failure probability over distance and the lives.</summary>
internal static class RiskCommand
{
    /// <summary>The most evaluations spent to reach a coefficient of variation unless asked otherwise.</summary>
    private const long MostUntilCov = 20_000_000;

    public static Command Create(Terminal terminal)
    {
        var options = new CommonOptions(RiskAnalysis.DefaultEvaluations);
        var own = new RiskOptions();
        Command command = options.StudyCommand(StudyBook.Risk.Name, StudyBook.Risk.About);
        own.AddTo(command);
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(parsed, options, own, terminal, cancellation)));
        return command;
    }

    private static int Run(ParseResult parsed, CommonOptions options, RiskOptions own, Terminal terminal, CancellationToken cancellation)
    {
        ScenarioDocument document = options.Read(parsed);
        var model = new LifeModel(document.Scenario);
        RiskQuestion question = own.Question(parsed);
        StudySettings settings = options.Settings(
            parsed, question.UntilCov > 0 ? MostUntilCov : null, RiskAnalysis.DefaultSampling(model));
        string? path = parsed.GetValue(own.Out);
        var keeper = new StateKeeper(document, path, terminal.Clock);
        question = question with
        {
            From = parsed.GetValue(own.Resume) ? keeper.Read(model) : null,
            Checkpoint = path is null ? null : keeper.Keep,
        };
        ((RiskResult result, RiskState state), TimeSpan elapsed) = options.Run(
            parsed, terminal, settings.Evaluations / question.Part.Of, run =>
                ((RiskResult, RiskState))terminal.Compute(() => RiskAnalysis.Run(model, settings, question, run)), cancellation);
        return StudyCommand.AnswerOf(StudyBook.Risk, document, new RiskRun(result, state), elapsed)
            .Give(parsed, options, terminal, path is null ? null : keeper.Write(state));
    }
}
