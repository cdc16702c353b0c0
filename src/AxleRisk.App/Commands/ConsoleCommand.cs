using System.CommandLine;
using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Shell;
using AxleRisk.App.Screens.Views;
using AxleRisk.App.Text;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk</c> and <c>axlerisk console [FILE]</c>: the console on the terminal.</summary>
internal static class ConsoleCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string?>("FILE")
        {
            Description = "the scenario to open, or the name of a new one; without one, choose from a list",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var command = new Command("console", "all pages on the terminal: edit a scenario and watch its answers (also: no command at all)")
            { file };
        command.SetAction(parsed => Run(parsed.GetValue(file), terminal, parsed.GetValue(CommonOptions.DataFolders)));
        return command;
    }

    /// <summary>Opens the console, or says why it cannot be opened here.</summary>
    public static int Run(string? file, Terminal terminal, IReadOnlyList<string>? dataFolders = null)
    {
        if (terminal.WhyNoConsole is { } why)
        {
            terminal.Error.WriteLine(
                $"{Product.Name}: the console needs a terminal: {why}. The commands work anywhere; try: {Product.Name} --help");
            return ExitCode.BadInput;
        }

        // Before the screen is taken: what cannot be read at all is told as by every other command. What is no valid scenario is
        // mended in the console.
        // A name that is not there yet is that of a new one.
        bool isNew = file is not null && NewFile.WhyNot(file) is null;
        EditedScenario? scenario = file is null || isNew ? null : EditedScenario.Open(file, dataFolders);

        try
        {
            OwnSettings.Load();
            return ConsoleHost.Run(scenario, isNew ? file : null, terminal.Clock, e => Environment.Exit(Failed(terminal, e)))
                ? ExitCode.Done : ExitCode.Interrupted;
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            return Failed(terminal, e);
        }
    }

    private static int Failed(Terminal terminal, Exception? e)
    {
        terminal.Error.WriteLine(
            $"{Product.Name}: the console ended by an error of its own: {Printable.Line(e?.Message ?? "unknown").TrimEnd('.')}. What was not saved is kept beside the scenario.");
        return ExitCode.Failed;
    }
}
