using System.CommandLine;
using AxleRisk.App.Answers;
using AxleRisk.App.Studies;
using AxleRisk.App.Text;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary>The command of a study, made of its description.</summary>
internal sealed class StudyCommand(Terminal terminal) : IStudyVisitor<Command>
{
    /// <inheritdoc/>
    public Command Visit<TQuestion, TResult>(Study<TQuestion, TResult> study)
        where TResult : class
    {
        var options = new CommonOptions(study.DefaultEvaluations);
        options.Evaluations.Description = study.EvaluationsHelp;
        Command command = options.StudyCommand(study.Name, study.About);
        QuestionOptions<TQuestion>? own = study.Options();
        foreach (Option option in own?.Options ?? [])
        {
            command.Add(option);
        }

        if (own?.Check is { } check)
        {
            command.Validators.Add(check);
        }

        command.SetAction((parsed, cancellation) =>
        {
            ScenarioDocument document = options.Read(parsed);
            TQuestion question = study.Usual(document.Scenario, parsed.GetValue(options.Evaluations) is not null);
            question = own is null ? question : own.Ask(parsed, question);
            if (study.WhyNot(document.Scenario, question) is { } whyNot)
            {
                terminal.Error.WriteLine($"{Printable.Line(document.FileName)}: {whyNot}");
                return Task.FromResult(ExitCode.BadInput);
            }

            var model = new LifeModel(document.Scenario);
            StudySettings settings = options.Settings(parsed, study.EvaluationsFor(model, question), study.Sampling(model));
            (TResult result, TimeSpan elapsed) = options.Run(
                parsed, terminal, study.Work(document.Scenario, question, settings.Evaluations),
                run => (TResult)terminal.Compute(() => study.Run(model, settings, question, options.Headlines(parsed, model), run)),
                cancellation);
            return Task.FromResult(AnswerOf(study, document, result, elapsed)
                .Give(parsed, options, terminal, study.WriteBesides(parsed, document, result)));
        });
        return command;
    }

    /// <summary>A result in the three forms that a command gives it in.</summary>
    public static Answer AnswerOf<TQuestion, TResult>(
        Study<TQuestion, TResult> study, ScenarioDocument document, TResult result, TimeSpan elapsed, string? command = null)
        where TResult : class => new(
            [
                .. Frame.Head(document), .. BlockLines.Of([.. study.Blocks(document, result), .. study.Notes(document)]), TextLine.Empty,
                .. study.Foot(result, elapsed),
            ],
            () => study.Document(document, result, elapsed, command), study.Header, study.Rows(result), study.RunOf(result).IsPartial);
}
