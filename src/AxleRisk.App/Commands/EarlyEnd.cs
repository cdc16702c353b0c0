using System.Runtime.InteropServices;

namespace AxleRisk.App.Commands;

/// <summary>
/// Ends a run early on Ctrl-C or SIGTERM: the first signal asks it to stop and tell what it knows, the second ends the process as the
/// system does. The command line library's own way waits for a task that a command, which works on the calling thread, has not yet given.
/// </summary>
internal sealed class EarlyEnd : IDisposable
{
    /// <summary>The time a run has to stop by itself.</summary>
    private static readonly TimeSpan LongestEnding = TimeSpan.FromSeconds(30);

    /// <summary>Said where an ended run has no answer.</summary>
    public const string NothingToTell = "ended before there was anything to tell";

    private readonly CancellationTokenSource source = new();
    private readonly PosixSignalRegistration[] registrations;
    private int signalled;

    /// <summary>Listens from now on.</summary>
    /// <param name="terminal">Where it is told that a run had to be ended by force.</param>
    public EarlyEnd(Terminal terminal) => registrations =
    [
        PosixSignalRegistration.Create(PosixSignal.SIGINT, context => End(context, ExitCode.Interrupted, terminal)),
        PosixSignalRegistration.Create(PosixSignal.SIGTERM, context => End(context, ExitCode.Terminated, terminal)),
    ];

    /// <summary>Asks the run to stop.</summary>
    public CancellationToken Token => source.Token;

    /// <summary>The exit code of a run: where it was ended early, that of the signal.</summary>
    public int CodeOf(int exit) => exit == ExitCode.Interrupted && signalled != 0 ? signalled : exit;

    public void Dispose()
    {
        foreach (PosixSignalRegistration registration in registrations)
        {
            registration.Dispose();
        }

        source.Dispose();
    }

    private void End(PosixSignalContext context, int exit, Terminal terminal)
    {
        if (Interlocked.CompareExchange(ref signalled, exit, 0) != 0)
        {
            return;
        }

        context.Cancel = true;
        if (!terminal.Runs.IsRunning)
        {
            // Nothing has been found out yet, or all has been told: the program waits for a file that another program gives or takes.
            terminal.Error.WriteLine($"{Product.Name}: {NothingToTell}");
            Environment.Exit(exit);
        }

        var watch = new Thread(() =>
        {
            Thread.Sleep(LongestEnding);
            terminal.Error.WriteLine($"{Product.Name}: ended by force: the run did not stop within {LongestEnding.TotalSeconds:0} s");
            Environment.Exit(exit);
        })
        {
            IsBackground = true,
        };
        watch.Start();
        source.Cancel();
    }
}
