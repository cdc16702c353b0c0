using System.Runtime.InteropServices;
using Terminal.Gui.App;

namespace AxleRisk.App.Screens.Views;

/// <summary>
/// Stops the process when the shell asks for it, with the terminal as it was before the console, and takes the screen again when it
/// goes on: <c>kill -TSTP</c>, then <c>fg</c>. Not on Windows, which knows no such signal.
/// </summary>
internal sealed class Suspension : IDisposable
{
    /// <summary>More than the settings of a terminal take anywhere (60 bytes on Linux, 72 on macOS).</summary>
    private const int SettingsSize = 256;

    private const int HoldMs = 1000;

    private const int StandardInput = 0, AtOnce = 0;

    // What the library switches on when it takes the screen (ECMA-48 and the private modes of xterm), and off when it gives it back.
    private const string Leave = "\u001b[0m\u001b[?2004l\u001b[?1003l\u001b[?1015l\u001b[?1006l\u001b[?1049l\u001b[?25h";
    private const string Take = "\u001b[?1049h\u001b[?25l\u001b[?1003h\u001b[?1015h\u001b[?1006h\u001b[?2004h";

    private readonly byte[]? before = Settings();
    private readonly PosixSignalRegistration? stop;
    private volatile bool isAsked;
    private byte[]? during;
    private long wentOn;

    /// <summary>Remembers the terminal as it is; before the application takes it.</summary>
    public Suspension()
    {
        if (!OperatingSystem.IsWindows() && before is not null)
        {
            stop = PosixSignalRegistration.Create(PosixSignal.SIGTSTP, context =>
            {
                context.Cancel = true;
                isAsked = true;
            });
        }
    }

    /// <summary>Stops here if that was asked for; called in every turn of the loop, between two drawings.</summary>
    public void StopIfAsked(IApplication app)
    {
        if (!isAsked || Settings() is not { } own)
        {
            Hold();
            return;
        }

        isAsked = false;
        Write(Leave);
        _ = SetSettings(StandardInput, AtOnce, before!);

        // Not the signal that was caught: this one stops every thread here and now.
        _ = Kill(Environment.ProcessId, OperatingSystem.IsLinux() ? 19 : 17);
        (during, wentOn) = (own, Environment.TickCount64);
        _ = SetSettings(StandardInput, AtOnce, own);
        Write(Take);
        app.Driver!.ClearContents();
        app.LayoutAndDraw(true);
    }

    /// <inheritdoc/>
    public void Dispose() => stop?.Dispose();

    /// <summary>Keeps the console's settings: the runtime, too, sets those it knows of when the process goes on, a moment later.</summary>
    private void Hold()
    {
        if (during is not null)
        {
            _ = Settings() is { } now && now.AsSpan().SequenceEqual(during) ? 0 : SetSettings(StandardInput, AtOnce, during);
            during = Environment.TickCount64 - wentOn < HoldMs ? during : null;
        }
    }

    private static void Write(string sequence)
    {
        Console.Out.Write(sequence);
        Console.Out.Flush();
    }

    private static byte[]? Settings()
    {
        byte[] settings = new byte[SettingsSize];
        return !OperatingSystem.IsWindows() && GetSettings(StandardInput, settings) == 0 ? settings : null;
    }

    [DllImport("libc", EntryPoint = "tcgetattr")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int GetSettings(int terminal, byte[] settings);

    [DllImport("libc", EntryPoint = "tcsetattr")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetSettings(int terminal, int when, byte[] settings);

    [DllImport("libc", EntryPoint = "kill")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Kill(int process, int signal);
}
