using System.Diagnostics;
using AxleRisk.App.Commands;
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
    public Task A_signal_ends_a_command_without_a_trace(string signal, int code, string command, string scenario,
        params string[] options) =>
        Ends(signal, code, [command, Cli.Shipped(scenario), .. options]);

    // A pipe that nobody writes to: opening it waits in the system, where no token of cancellation reaches.
    [Theory]
    [InlineData("INT", 130, "check")]
    [InlineData("TERM", 143, "merge")]
    public async Task A_signal_ends_a_command_that_waits_for_a_file(string signal, int code, string command)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "there are no such pipes");
        string pipe = Path.Combine(TemporaryFolder.New(), "pipe");
        using (Process make = Process.Start("mkfifo", [pipe]))
        {
            await make.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        await Ends(signal, code, [command, pipe]);
    }

    private static async Task Ends(string signal, int code, string[] arguments)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "there are no such signals");

        // On a slow machine a signal may come before the program listens: then the system ends it, without a word. That tells
        // nothing, so it
        // is tried again, later after the start.
        for (int wait = 700; ; wait *= 2)
        {
            (int exit, string told) = await Signalled(signal, wait, arguments);
            Assert.Equal(code, exit);
            Assert.DoesNotContain("by force", told, StringComparison.Ordinal);
            Assert.DoesNotContain("Exception", told, StringComparison.Ordinal);
            if (told.Contains(EarlyEnd.NothingToTell, StringComparison.Ordinal) || told.Contains("ended early", StringComparison.Ordinal))
            {
                return;
            }

            Assert.True(wait < 20_000, $"the program never told that it was ended: {told}");
        }
    }

    private static async Task<(int Exit, string Told)> Signalled(string signal, int waitMs, string[] arguments)
    {
        using Process process = Process.Start(TestedProgram.Start(arguments))!;
        Task<string> error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        Task<string> output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await Task.Delay(waitMs, TestContext.Current.CancellationToken);
        using (Process kill = Process.Start("kill", ["-s", signal, process.Id.ToString()]))
        {
            await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, await error + await output);
    }
}
