using System.CommandLine;
using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk check FILE</c>: validates a scenario and lists its factors.</summary>
internal static class CheckCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new CommonOptions(null);
        Command command = options.PlainCommand("check", "validate a scenario and list its factors");
        command.SetAction(parsed =>
        {
            ScenarioDocument document = options.Read(parsed);
            var factors = FactorSet.Of(document.Scenario);
            return new Answer(
                [
                    .. Frame.Head(document),
                    .. BlockLines.Of([.. CheckBlocks.Of(document.Scenario, factors), .. NoteBlocks.Warnings(document)]),
                ],
                () => CheckDocument.Of(document, factors),
                CheckDocument.Header, CheckDocument.Rows(factors)).Give(parsed, options, terminal);
        });
        return command;
    }
}
