using System.CommandLine;

namespace AxleRisk.App.Commands;

/// <summary>
/// <c>axlerisk completions SHELL</c>: what a shell needs to complete the command line; and <c>axlerisk suggest</c>, hidden, which it
/// then asks.
/// </summary>
internal static class CompletionsCommand
{
    public static Command Create(Terminal terminal)
    {
        var shell = new Argument<string>("SHELL") { Description = "the shell", HelpName = string.Join('|', CompletionScripts.Shells) };
        shell.AcceptOnlyFromAmong([.. CompletionScripts.Shells]);
        var command = new Command("completions", "print what a shell needs to complete commands, options, scenarios and inputs") { shell };
        command.SetAction(parsed => terminal.Out.WriteLine(CompletionScripts.Of(parsed.GetValue(shell)!)));
        return command;
    }

    /// <summary>The command that the scripts ask: the words of the line, the last, under way, with a + before it.</summary>
    public static Command CreateSuggest(Terminal terminal, Command root)
    {
        var words = new Argument<string[]>("WORDS") { Arity = ArgumentArity.OneOrMore };
        var command = new Command("suggest", "what the last word may become, for completion") { words };
        command.Hidden = true;
        command.SetAction(parsed =>
        {
            string[] given = parsed.GetValue(words)!;
            foreach (string found in Suggestions.Of(root, given[..^1], given[^1].StartsWith('+') ? given[^1][1..] : given[^1]))
            {
                terminal.Out.WriteLine(found);
            }
        });
        return command;
    }
}
