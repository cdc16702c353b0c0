using AxleRisk.App.Commands;

namespace AxleRisk.App.Tests.Commands;

/// <summary>Runs the program in this process (or another that is to be tested) and keeps what it wrote.</summary>
internal static class Cli
{
    public static (int Exit, string Out, string Error) Run(params string[] args) =>
        TestedProgram.Given is null ? Run(args, TimeProvider.System, false, default) : TestedProgram.Run(args);

    /// <summary>
    /// The same on one thread, ended at a reading of the clock: two come before a run, then one after every part of it that is
    /// done.
    /// </summary>
    public static (int Exit, string Out, string Error) RunUntil(int reading, params string[] args)
    {
        using var source = new CancellationTokenSource();
        return Run([.. args, "--threads", "1"], new EndingClock(reading, source), true, source.Token);
    }

    private static (int Exit, string Out, string Error) Run(string[] args, TimeProvider clock, bool showsProgress,
        CancellationToken cancellation)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var terminal = new AxleRisk.App.Commands.Terminal
        {
            Out = output,
            Error = error,
            ShowsProgress = showsProgress,
            Clock = clock,
            // What a part or a merge finds depends on its folder.
            Compute = study => showsProgress || args is ["cluster", ..] ? study() : SharedStudies.Of(args, study),
        };
        int exit = AxleRiskCommand.RunAsync(args, terminal, cancellation).GetAwaiter().GetResult();
        return (exit, output.ToString(), error.ToString());
    }

    /// <summary>A shipped scenario's path.</summary>
    public static string Shipped(string name)
    {
        string folder = AppContext.BaseDirectory;
        while (!Directory.Exists(Path.Combine(folder, "scenarios")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("no folder 'scenarios' above the tests");
        }

        return Path.Combine(folder, "scenarios", name + ".toml");
    }

    /// <summary>A file of this content in a new folder of its own.</summary>
    public static string Temporary(string content)
    {
        string path = Path.Combine(TemporaryFolder.New(), "case.toml");
        File.WriteAllText(path, content);
        return path;
    }

    /// <summary>The file of this content, whose studies the tests share; beside it the data of the shipped scenarios.</summary>
    public static string Shared(string content) => SharedStudies.FileOf(content);

    /// <summary>A clock that stands still, so that no progress is drawn, and ends the run at one of its readings.</summary>
    private sealed class EndingClock(int reading, CancellationTokenSource source) : TimeProvider
    {
        private int readings;

        public override long GetTimestamp()
        {
            if (++readings == reading)
            {
                source.Cancel();
            }

            return 0;
        }
    }
}
