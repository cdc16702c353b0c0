using System.Collections.Concurrent;
using System.Diagnostics;
using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Shell;
using AxleRisk.App.Screens.Views;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;

namespace AxleRisk.Benchmarks;

/// <summary>The console's window on a thread of its own, at the pace it has in a terminal, drawn into memory.</summary>
internal sealed class DrawnConsole : IDisposable
{
    private readonly ManualResetEventSlim isReady = new();
    private readonly ConcurrentQueue<Action> keys = new();
    private readonly Thread loop;
    private IApplication app = null!;
    private ConsoleWindow window = null!;

    /// <summary>Opens a scenario and draws it until disposed.</summary>
    public DrawnConsole(string path)
    {
        Environment.SetEnvironmentVariable("DisableRealDriverIO", "1");
        OwnSettings.Load();
        Look.Apply(monochrome: true);
        loop = new Thread(() => Loop(path)) { Name = "screen" };
        loop.Start();
        isReady.Wait();
    }

    /// <summary>The console; to be changed by <see cref="Time"/> alone.</summary>
    public ConsoleState State { get; private set; } = null!;

    /// <summary>Presses a key.</summary>
    /// <returns>The time to the end of the drawing that shows it, ms.</returns>
    public double Press(PageKey key) => Time(() => State.Press(key), () => true);

    /// <summary>
    /// Does what a key does, when the loop looks for keys, and waits for the drawing that shows what is awaited. The thread that reads
    /// a terminal, which looks every 20 ms, is not here.
    /// </summary>
    /// <returns>The time from the call to the end of that drawing, ms.</returns>
    public double Time(Action act, Func<bool> shows)
    {
        using var isShown = new ManualResetEventSlim();
        bool holds = false;
        void Begin(object? sender, EventArgs e) => holds = shows();
        void End(object? sender, EventArgs e)
        {
            if (holds)
            {
                window.ClearingViewport -= Begin;
                window.DrawComplete -= End;
                isShown.Set();
            }
            else if (shows())
            {
                // It came about while this was drawn, and may be on the screen already: counted with the next drawing. What is asked for
                // within a drawing may be lost, so that it is asked for after it.
                app.AddTimeout(TimeSpan.Zero, () =>
                {
                    window.SetNeedsDraw();
                    return false;
                });
            }
        }

        var watch = Stopwatch.StartNew();
        keys.Enqueue(() =>
        {
            act();
            window.SetNeedsDraw();
            window.ClearingViewport += Begin;
            window.DrawComplete += End;
        });
        isShown.Wait();
        return watch.Elapsed.TotalMilliseconds;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        app.Invoke(() => app.RequestStop());
        loop.Join();
        isReady.Dispose();
    }

    private void Loop(string path)
    {
        var pace = new Pace();
        app = Application.Create();
        app.Init(DriverRegistry.Names.ANSI);
        pace.Drive(app);
        app.Driver!.SetScreenSize(80, 24);
        State = new ConsoleState(new Dialogs(() => app), TimeProvider.System, () => []) { Wake = pace.Wake };
        State.Show(EditedScenario.Open(path));
        window = new ConsoleWindow(State, TimeProvider.System);
        app.Iteration += (_, _) =>
        {
            pace.Wait(app);
            while (keys.TryDequeue(out Action? key))
            {
                key();
            }

            window.Poll();
        };
        app.Invoke(isReady.Set);
        app.Run(window);
        window.Dispose();
        State.Dispose();
        app.Dispose();
    }
}
