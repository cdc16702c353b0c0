using System.Collections.Immutable;
using System.CommandLine;
using AxleRisk.App.Documents;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.BaseCase;
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
        Command command = options.StudyCommand("risk", "the failure probability over distance, and the B1, B5, B10 and B50 lives");
        own.AddTo(command);
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(parsed, options, own, terminal, cancellation)));
        return command;
    }

    /// <summary>The answer of a study or of its parts joined.</summary>
    public static Answer AnswerOf(string command, ScenarioDocument document, RiskResult result, TimeSpan elapsed)
    {
        ImmutableArray<LiftOffLeg> liftOff = LiftOffCheck.Run(new LifeModel(document.Scenario));
        return new Answer(
            [
                .. Frame.Head(document), .. RiskText.Lines(result), .. LiftOffText.Lines(liftOff, document),
                .. Frame.Assumptions(document.Scenario),
                .. Frame.Foot(result.Run, RiskText.Method(result), elapsed),
            ],
            () => LiftOffDocument.AddTo(RiskDocument.AddTo(Json.Head(command, document), result), liftOff).WithRun(result.Run, elapsed)
                .WithNotes(document),
            RiskDocument.Header, RiskDocument.Rows(result), result.Run.IsPartial);
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
                RiskAnalysis.Run(model, settings, question, run), cancellation);
        return AnswerOf("risk", document, result, elapsed).Give(parsed, options, terminal, path is null ? null : keeper.Write(state));
    }
}
