using System.Diagnostics;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>Signals to the program in a process of its own.</summary>
public sealed class EarlyEndTests
{
    // 128 + the number of the signal: common practice of shells, POSIX.1-2017 2.8.2 asks for more than 128.
    [Theory]
    [InlineData("INT", 130, "confirm", "desert-crossing", "--km", "100000", "--points", "0")]
    [InlineData("TERM", 143, "confirm", "desert-crossing", "--km", "100000", "--points", "0")]
    [InlineData("TERM", 143, "trip", "desert-crossing", "-n", "200000")]
    public Task A_signal_ends_a_command_without_a_trace(string signal, int code, string command, string scenario, params string[] options) =>
        Ends(signal, code, [command, Cli.Shipped(scenario), .. options]);

    // A pipe that nobody writes to: opening it waits in the system, where no token of cancellation reaches.
    [Theory]
    [InlineData("INT", 130, "check")]
    [InlineData("TERM", 143, "merge")]
    public async Task A_signal_ends_a_command_that_waits_for_a_file(string signal, int code, string command)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "there are no such pipes");
        DirectoryInfo folder = Directory.CreateTempSubdirectory("axlerisk-test-");
        string pipe = Path.Combine(folder.FullName, "pipe");
        using (Process make = Process.Start("mkfifo", [pipe]))
        {
            await make.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        await Ends(signal, code, [command, pipe]);
        folder.Delete(recursive: true);
    }

    private static async Task Ends(string signal, int code, string[] arguments)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "there are no such signals");
        string program = Path.Combine(AppContext.BaseDirectory, "axlerisk.dll");
        var start = new ProcessStartInfo("dotnet", [program, .. arguments]) { RedirectStandardError = true, RedirectStandardOutput = true };
        using Process process = Process.Start(start)!;
        Task<string> error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        Task<string> output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);

        // On a slow machine it comes before the program listens: then the system ends it, with the same code.
        await Task.Delay(700, TestContext.Current.CancellationToken);
        using (Process kill = Process.Start("kill", ["-s", signal, process.Id.ToString()]))
        {
            await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(code, process.ExitCode);
        Assert.DoesNotContain("by force", await error, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", await error + await output, StringComparison.Ordinal);
    }
}
