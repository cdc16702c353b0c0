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
    public async Task A_signal_ends_a_command_without_a_trace(string signal, int code, string command, string scenario, params string[] options)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "there are no such signals");
        string program = Path.Combine(AppContext.BaseDirectory, "axlerisk.dll");
        var start = new ProcessStartInfo("dotnet", [program, command, Cli.Shipped(scenario), .. options]) { RedirectStandardError = true, RedirectStandardOutput = true };
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
