using System.Runtime.CompilerServices;
using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Shell;
using AxleRisk.App.Screens.Views;
using AxleRisk.App.Tests.Commands;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using Terminal.Gui.Time;

namespace AxleRisk.App.Tests.Screens;

/// <summary>Runs the console's window without a terminal: a script of keys, with looks at what the screen shows.</summary>
internal static class HeadlessConsole
{
    /// <summary>Evaluations of the live study: few, so that a test is quick.</summary>
    public const long FewEvaluations = 4096;

    /// <summary>Runs a script on an open scenario; one step every two turns of the loop, so that windows of their own work too.</summary>
    public static void Run(string scenario, int width, int height, params Action<Step>[] script) =>
        Run(console => console.Show(EditedScenario.Open(Cli.Shipped(scenario))), [], width, height, script);

    /// <summary>Runs a script.</summary>
    public static void Run(Action<ConsoleState> begin, IReadOnlyList<ScenarioEntry> entries, int width, int height,
        params Action<Step>[] script)
    {
        Look.Apply(monochrome: true);
        Application.MaximumIterationsPerSecond = ushort.MaxValue;
        using IApplication app = Application.Create(new VirtualTimeProvider());
        app.Init(DriverRegistry.Names.ANSI);
        app.Driver!.SetScreenSize(width, height);
        using var state = new ConsoleState(new Dialogs(() => app), TimeProvider.System, () => entries) { RiskEvaluations = FewEvaluations };
        begin(state);
        using var window = new ConsoleWindow(state, TimeProvider.System);
        var steps = new Queue<Action<Step>>(script);
        Exception? failure = null;
        int turn = 0;
        app.Iteration += (_, _) =>
        {
            window.SetNeedsDraw();
            if (turn++ % 2 == 0)
            {
                return;
            }

            if (failure is null && steps.TryDequeue(out Action<Step>? step))
            {
                try
                {
                    step(new Step(app, state));
                }
                catch (Exception e)
                {
                    failure = e;
                }
            }
            else
            {
                app.RequestStop();
            }
        };
        app.Run(window);
        if (failure is not null)
        {
            throw new InvalidOperationException("a step of the script failed: " + failure.Message, failure);
        }
    }

    /// <summary>Presses keys, one after the other.</summary>
    public static Action<Step> Keys(params Key[] keys) => step =>
    {
        foreach (Key key in keys)
        {
            step.App.InjectKey(key);
        }
    };

    /// <summary>Types a text.</summary>
    public static Action<Step> Type(string text) => Keys([.. text.Select(c => new Key(c))]);

    /// <summary>Looks at the screen.</summary>
    public static Action<Step> Look_at(Action<string> look) => step => look(step.Screen);

    /// <summary>Waits until something has happened in the background.</summary>
    public static Action<Step> Until(Func<ConsoleState, Task> what) => step => Patience.Until(what(step.State));

    /// <summary>Does nothing for a turn, so that the screen is drawn.</summary>
    public static Action<Step> Pause() => _ => { };

    [ModuleInitializer]
    internal static void WithoutTerminal() => Environment.SetEnvironmentVariable("DisableRealDriverIO", "1");
}

/// <summary>A moment of a script.</summary>
internal sealed record Step(IApplication App, ConsoleState State)
{
    /// <summary>The screen as text.</summary>
    public string Screen => App.Driver!.ToString()!;
}
