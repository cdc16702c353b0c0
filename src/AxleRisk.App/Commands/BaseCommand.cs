using System.CommandLine;
using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk base FILE</c>: the base case and one factor at a time.</summary>
internal static class BaseCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new CommonOptions(null);
        Command command = options.PlainCommand("base", "the base case: life, damage by leg, frequencies; then one factor at a time");
        command.SetAction(parsed =>
        {
            ScenarioDocument document = options.Read(parsed);
            var model = new LifeModel(document.Scenario);
            BaseCaseResult result = BaseCaseAnalysis.Run(model);
            return new Answer(
                [
                    .. Frame.Head(document), .. BlockLines.Of([.. BaseBlocks.Of(result), .. NoteBlocks.Of(document)]), TextLine.Empty,
                    .. Frame.CautionLines,
                ],
                () => BaseDocument.Of(document, result),
                BaseDocument.Header, BaseDocument.Rows(result)).Give(parsed, options, terminal);
        });
        return command;
    }
}
