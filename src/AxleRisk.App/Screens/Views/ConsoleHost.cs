using System.Runtime.InteropServices;
using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Shell;
using AxleRisk.App.Text;
using Terminal.Gui.App;
using Terminal.Gui.Input;

namespace AxleRisk.App.Screens.Views;

/// <summary>Starts and ends the console, and leaves the terminal as it was in every case.</summary>
internal static class ConsoleHost
{
    /// <summary>Runs the console until the reader leaves; after <see cref="OwnSettings.Load"/>.</summary>
    /// <param name="scenario">The scenario to open; null for the list of scenarios.</param>
    /// <param name="clock">The clock, for elapsed times only.</param>
    /// <returns>Whether the reader left; false where a signal ended the console.</returns>
    public static bool Run(EditedScenario? scenario, TimeProvider clock)
    {
        Look.Apply(monochrome: Environment.GetEnvironmentVariable("NO_COLOR") is { Length: > 0 });
        Application.RemoveDefaultKeyBinding(Command.Suspend);
        IApplication app = Application.Create();
        bool isSignalled = false;
        PosixSignalRegistration EndOn(PosixSignal signal) => PosixSignalRegistration.Create(signal, context =>
        {
            context.Cancel = true;
            isSignalled = true;
        });
        void Restore(object sender, UnhandledExceptionEventArgs e) => app.Dispose();
        AppDomain.CurrentDomain.UnhandledException += Restore;
        try
        {
            using PosixSignalRegistration term = EndOn(PosixSignal.SIGTERM);
            using PosixSignalRegistration hangup = EndOn(PosixSignal.SIGHUP);
            Style.IsOn = true;
            app.Init();
            app.Driver!.Force16Colors = true;
            using var state = new ConsoleState(new Dialogs(() => app), clock, () => ScenarioFolder.Find(Environment.CurrentDirectory));
            if (scenario is not null)
            {
                state.Show(scenario);
                app.Invoke(state.OfferRecovered);
            }

            using var window = new ConsoleWindow(state, clock);
            app.Iteration += (_, _) =>
            {
                window.Poll();
                if (isSignalled)
                {
                    // In every turn: one stop closes the window in front, which may be a dialog.
                    app.RequestStop();
                }
            };
            app.Run(window);

            if (isSignalled)
            {
                // A signal leaves no time for questions: what is not saved stays beside the file.
                state.Keep(atOnce: true);
            }

            return !isSignalled;
        }
        finally
        {
            // Before anything is printed: a message on the alternate screen would be lost.
            app.Dispose();
            AppDomain.CurrentDomain.UnhandledException -= Restore;
        }
    }
}
