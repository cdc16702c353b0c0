using System.Diagnostics;

namespace AxleRisk.App.Tests.Commands;

/// <summary>
/// The program that the tests start: the one compiled with them, or that of AXLERISK_PROGRAM, a native one in an archive. Then the
/// commands that a test otherwise runs in its own process are run by that program, too.
/// </summary>
internal static class TestedProgram
{
    /// <summary>The program given, or null.</summary>
    public static string? Given { get; } = Environment.GetEnvironmentVariable("AXLERISK_PROGRAM") is { Length: > 0 } path ? path : null;

    /// <summary>The words that begin its command line.</summary>
    public static string[] Words { get; } = Given is null ? ["dotnet", Path.Combine(AppContext.BaseDirectory, "axlerisk.dll")] : [Given];

    /// <summary>Its command line, ready to be started with both its outputs read.</summary>
    public static ProcessStartInfo Start(string[] arguments) => new(Words[0], [.. Words[1..], .. arguments])
    {
        RedirectStandardError = true,
        RedirectStandardOutput = true,
    };

    /// <summary>Runs it to its end.</summary>
    public static (int Exit, string Out, string Error) Run(string[] arguments)
    {
        using Process process = Process.Start(Start(arguments))!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.GetAwaiter().GetResult());
    }
}
