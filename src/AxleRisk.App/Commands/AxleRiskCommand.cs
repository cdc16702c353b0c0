using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using AxleRisk.App.Commands.Cluster;
using AxleRisk.App.Studies;
using AxleRisk.App.Text;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary>The whole command line: arguments in, exit code out.</summary>
internal static class AxleRiskCommand
{
    public static async Task<int> RunAsync(string[] args, Terminal terminal, CancellationToken cancellation = default)
    {
        // Numbers are written in one way, whatever the surroundings say.
        CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
        var root = new RootCommand("How likely a live rear axle is to break, over distance, and what drives it.")
        {
            CheckCommand.Create(terminal), BaseCommand.Create(terminal),
        };
        var ofStudy = new StudyCommand(terminal);
        foreach (IStudy study in StudyBook.All)
        {
            root.Add(study == StudyBook.Risk ? RiskCommand.Create(terminal)
                : study == StudyBook.Learn ? LearnCommand.Create(terminal) : study.Accept(ofStudy));
        }

        foreach (Command command in (Command[])
            [
                FitCommand.Create(terminal), CompareCommand.Create(terminal), ConfirmCommand.Create(terminal),
                    ReportCommand.Create(terminal),
                MergeCommand.Create(terminal), SchemaCommand.Create(terminal), ConsoleCommand.Create(terminal),
                CompletionsCommand.Create(terminal), CompletionsCommand.CreateSuggest(terminal, root), ManualCommand.Create(terminal, root),
            ])
        {
            root.Add(command);
        }

        root.Add(ClusterCommand.Create(terminal, root));
        root.Add(CommonOptions.DataFolders);
        root.Add(SharedRun.Option);
        root.Options.OfType<VersionOption>().First().Action = new VersionAction(terminal);
        if (terminal.WhyNoConsole is null)
        {
            // On a terminal no command means the console; elsewhere it stays an error, for a script has forgotten something.
            root.SetAction(_ => ConsoleCommand.Run(null, terminal));
        }

        ParseResult parsed = root.Parse(args);
        if (parsed.Errors.Count > 0)
        {
            foreach (string message in Mistyped(parsed, root) is { } mistyped ? [mistyped]
                : parsed.Errors.Select(e => InOurWords(e.Message, root)).Distinct())
            {
                terminal.Error.WriteLine($"{Product.Name}: {Printable.Line(message)}");
            }

            terminal.Error.WriteLine($"Try: {Product.Name} {Subcommand(parsed)}--help");
            return ExitCode.BadInput;
        }

        if (OutputFile.Trouble(parsed) is { } trouble)
        {
            terminal.Error.WriteLine($"{Product.Name}: {trouble}");
            return ExitCode.Failed;
        }

        try
        {
            var configuration = new InvocationConfiguration
            {
                Output = terminal.Out,
                Error = terminal.Error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
            };
            return await parsed.InvokeAsync(configuration, cancellation);
        }
        catch (ScenarioException e)
        {
            foreach (ScenarioError error in e.Errors)
            {
                terminal.Error.WriteLine(Printable.Line(error.ToString()));
            }

            return ExitCode.BadInput;
        }
        catch (OperationCanceledException)
        {
            terminal.Error.WriteLine($"{Product.Name}: {EarlyEnd.NothingToTell}");
            return ExitCode.Interrupted;
        }
        catch (PartDoneException)
        {
            return ExitCode.Done;
        }
        catch (StudyException e)
        {
            terminal.Error.WriteLine($"{Product.Name}: {Printable.Line(e.Message)}");
            return ExitCode.BadInput;
        }
    }

    /// <summary>A mistyped command or option with what was meant, in one sentence; null where there is none.</summary>
    private static string? Mistyped(ParseResult parsed, RootCommand root)
    {
        Command command = parsed.CommandResult.Command;
        if (parsed.UnmatchedTokens is not [string word, ..])
        {
            return null;
        }

        bool isOption = word.StartsWith("--", StringComparison.Ordinal);
        IEnumerable<string> known = isOption ? Suggestions.Options(root, command).Select(o => o.Name)
            : command.Subcommands.Where(c => !c.Hidden).Select(c => c.Name);
        return Spelling.Nearest(word.Split('=')[0], known) is { } meant
            ? $"there is no {(isOption ? "option" : "command")} {word.Split('=')[0]}; did you mean {meant}?"
            : null;
    }

    private static string InOurWords(string message, RootCommand root)
    {
        string[] names = [.. root.Subcommands.Where(c => !c.Hidden).Select(c => c.Name)];
        return message == "Required command was not provided."
            ? $"a command is needed: {string.Join(", ", names[..^1])} or {names[^1]}"
            : message;
    }

    private static string Subcommand(ParseResult parsed)
    {
        string path = "";
        for (CommandResult? command = parsed.CommandResult; command?.Parent is not null; command = command.Parent as CommandResult)
        {
            path = $"{command.Command.Name} {path}";
        }

        return path;
    }
}
