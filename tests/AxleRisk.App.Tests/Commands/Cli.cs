using AxleRisk.App.Commands;

namespace AxleRisk.App.Tests.Commands;

/// <summary>Runs the program in this process and keeps what it wrote.</summary>
internal static class Cli
{
    public static (int Exit, string Out, string Error) Run(params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var terminal = new AxleRisk.App.Commands.Terminal { Out = output, Error = error, ShowsProgress = false, Clock = TimeProvider.System };
        int exit = AxleRiskCommand.RunAsync(args, terminal).GetAwaiter().GetResult();
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
        string path = Path.Combine(Directory.CreateTempSubdirectory("axlerisk-test-").FullName, "case.toml");
        File.WriteAllText(path, content);
        return path;
    }
}
