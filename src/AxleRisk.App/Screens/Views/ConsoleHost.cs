using System.Runtime.InteropServices;
using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Shell;
using Terminal.Gui.App;
using Terminal.Gui.Input;

namespace AxleRisk.App.Screens.Views;

/// <summary>Starts and ends the console, and leaves the terminal as it was in every case.</summary>
internal static class ConsoleHost
{
    /// <summary>The time the console has to end by itself when told to; less where there is no terminal left to give back.</summary>
    private static readonly TimeSpan ToEnd = TimeSpan.FromSeconds(3), ToEndWithoutTerminal = TimeSpan.FromSeconds(1);

    /// <summary>Runs the console until the reader leaves; after <see cref="OwnSettings.Load"/>.</summary>
    /// <param name="scenario">The scenario to open; null for the list of scenarios.</param>
    /// <param name="newPath">The file of a new scenario to ask about; null for none.</param>
    /// <param name="clock">The clock, for elapsed times only.</param>
    /// <param name="failed">Tells of an error on a thread of its own and ends the process; the terminal is as it was by then.</param>
    /// <returns>Whether the reader left; false where a signal ended the console.</returns>
    public static bool Run(EditedScenario? scenario, string? newPath, TimeProvider clock, Action<Exception?> failed)
    {
        Look.Apply(monochrome: Environment.GetEnvironmentVariable("NO_COLOR") is { Length: > 0 });
        var pace = new Pace();
        Application.RemoveDefaultKeyBinding(Command.Suspend);
        using var suspension = new Suspension();
        IApplication app = Application.Create();
        string folder = Environment.CurrentDirectory;
        using var state = new ConsoleState(new Dialogs(() => app), clock, () => ScenarioFolder.Find(folder)) { Wake = pace.Wake };
        bool isSignalled = false;
        bool isFailing = false;
        PosixSignalRegistration EndOn(PosixSignal signal) => PosixSignalRegistration.Create(signal, context =>
        {
            context.Cancel = true;
            isSignalled = true;

            // A terminal that is gone can hold the loop for ever: then the process ends without it.
            var watch = new Thread(() =>
            {
                Thread.Sleep(signal == PosixSignal.SIGHUP ? ToEndWithoutTerminal : ToEnd);
                state.Keep(atOnce: true);
                state.Edited?.File.Release();
                Environment.Exit(128 + (signal == PosixSignal.SIGHUP ? 1 : 15));
            });
            watch.IsBackground = true;
            watch.Start();
        });
        void EndOnFailure(object sender, UnhandledExceptionEventArgs e)
        {
            // On a thread that is nobody's: the runtime would print its trace over the screen and abort.
            isFailing = true;
            state.Keep(atOnce: true);
            app.Dispose();
            failed(e.ExceptionObject as Exception);
        }

        AppDomain.CurrentDomain.UnhandledException += EndOnFailure;
        try
        {
            using PosixSignalRegistration term = EndOn(PosixSignal.SIGTERM);
            using PosixSignalRegistration hangup = EndOn(PosixSignal.SIGHUP);
            app.Init();
            pace.Drive(app);
            app.Driver!.Force16Colors = true;
            if (scenario is not null)
            {
                state.Show(scenario);
                app.Invoke(state.AskOnOpening);
            }
            else if (newPath is not null)
            {
                app.Invoke(() => state.AskForNew(newPath));
            }

            using var window = new ConsoleWindow(state, clock);
            app.Iteration += (_, _) =>
            {
                pace.Wait(app);
                suspension.StopIfAsked(app);
                window.Poll();
                if (isSignalled)
                {
                    // In every turn: one stop closes the window in front, which may be a dialog.
                    app.RequestStop();
                }
            };
            app.Run(window);
            if (isFailing)
            {
                // The other thread ends the process, with its own exit code.
                Thread.Sleep(System.Threading.Timeout.Infinite);
            }

            return !isSignalled;
        }
        finally
        {
            if (!state.HasQuit)
            {
                // A signal or an error leaves no time for questions: what is not saved stays beside the file.
                state.Keep(atOnce: true);
            }

            // Before anything is printed: a message on the alternate screen would be lost.
            app.Dispose();
            AppDomain.CurrentDomain.UnhandledException -= EndOnFailure;
        }
    }
}
