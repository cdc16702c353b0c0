using AxleRisk.App.Commands;

namespace AxleRisk.Benchmarks;

/// <summary>
/// What the program prints to many commands, in one process: to start it anew for each takes longer than most of the answers
/// (.ci/update-examples).
/// </summary>
internal static class ExampleAnswers
{
    /// <summary>
    /// Answers the commands in their order, each into a file that bears its words with "_" for "/". Paths are those of the current folder;
    /// characters and emphasis those of an output that is no terminal.
    /// </summary>
    /// <param name="commands">One a line: arguments between single blanks, none with a blank of its own.</param>
    /// <param name="folder">Where the files go.</param>
    /// <returns>The exit code of the first command that fails, with which the rest is left; 0 where none does.</returns>
    public static async Task<int> Write(TextReader commands, string folder)
    {
        while (await commands.ReadLineAsync() is { } line)
        {
            await using var output = new StreamWriter(Path.Combine(folder, line.Replace('/', '_'))) { NewLine = "\n" };
            var terminal = AxleRisk.App.Commands.Terminal.OfProcess() with { Out = output, ShowsProgress = false };
            int exit = await AxleRiskCommand.RunAsync(line.Split(' '), terminal, CancellationToken.None);
            if (exit != 0)
            {
                await Console.Error.WriteLineAsync($"axlerisk {line}: it ended with {exit}");
                return exit;
            }
        }

        return 0;
    }
}
