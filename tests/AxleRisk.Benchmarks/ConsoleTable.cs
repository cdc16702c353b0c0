using System.Diagnostics;
using System.Globalization;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Pages.Ranking;
using AxleRisk.App.Tests;
using AxleRisk.App.Tests.Files;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;
using AxleRisk.Files.Writing;

using Stopwatch = System.Diagnostics.Stopwatch;

namespace AxleRisk.Benchmarks;

/// <summary>
/// The console beside the command, as a Markdown table: its study against the same study alone, an edit to its new figure, the
/// ranking, a key to the screen while a study runs. The console draws as in a terminal, at its own pace, into memory.
/// </summary>
internal static class ConsoleTable
{
    private const int Rounds = 15;
    private const int Keys = 300;

    /// <summary>The evaluations of the study that runs while keys are pressed: more than are made meanwhile.</summary>
    private const long Endless = 2_000_000_000;

    /// <summary>Measures and prints.</summary>
    /// <param name="scenarios">The names of the shipped scenarios; all where none is named. One takes about a minute.</param>
    public static void Print(params string[] scenarios)
    {
        Console.WriteLine(
            $"{RiskAnalysis.DefaultEvaluations:#,0} evaluations, medians of {Rounds} rounds of one after the other, {Environment.ProcessorCount} cores\n");
        Console.WriteLine("| scenario | study alone, ms | in the console, times that | in processor time | edit to figure, ms | to the whole answer, ms | ranking, ms | key to screen, ms | of 99 % |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        string folder = TemporaryFolder.New();
        string shipped = Repository.PathTo("scenarios");
        foreach (string file in Repository.Scenarios.Concat(Directory.GetFiles(shipped, "*.csv", SearchOption.AllDirectories)))
        {
            string copy = Path.Combine(folder, Path.GetRelativePath(shipped, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        foreach (string path in Directory.GetFiles(folder, "*.toml").Order(StringComparer.Ordinal)
            .Where(p => scenarios.Length == 0 || scenarios.Contains(Path.GetFileNameWithoutExtension(p))))
        {
            using var console = new DrawnConsole(path);
            Console.WriteLine(Row(Path.GetFileNameWithoutExtension(path), console));
        }
    }

    private static string Row(string name, DrawnConsole console)
    {
        LiveRisk risk = console.State.Session!.Risk;
        risk.Run.Completion.Wait();
        LifeModel model = console.State.Session.Model;
        void Alone() => RiskAnalysis.Run(model, risk.SettingsOf(model), new RiskQuestion(), new RunOptions());
        void InConsole() => console.Time(() => risk.Start(), () => IsWhole(risk));

        // Once each before it counts: what runs is compiled by then.
        Alone();
        InConsole();
        (Spent Alone, Spent Console)[] runs = [.. Enumerable.Range(0, Rounds).Select(_ => (Measure(Alone), Measure(InConsole)))];
        (double Figure, double Whole)[] edits = [.. Enumerable.Range(1, Rounds).Select(i => Edit(console, i))];
        double[] ranking = [.. Enumerable.Range(0, 5).Select(_ => Ranking(console))];
        double[] keys = [.. Pressed(console, risk).Order()];
        return string.Create(CultureInfo.InvariantCulture,
            $"| {name} | {1000 * Median(runs.Select(r => r.Alone.Seconds)):0} | {Median(runs.Select(r => r.Console.Seconds / r.Alone.Seconds)):0.00} | {Median(runs.Select(r => r.Console.Processor / r.Alone.Processor)):0.00} | {Median(edits.Select(e => e.Figure)):0} | {Median(edits.Select(e => e.Whole)):0} | {Median(ranking):0} | {Median(keys):0} | {keys[(int)(0.99 * keys.Length)]:0} |");
    }

    /// <summary>The time from an edit to a failure probability on the screen, and to that of all evaluations, ms.</summary>
    private static (double Figure, double Whole) Edit(DrawnConsole console, int round)
    {
        Session session = console.State.Session!;
        LiveRisk risk = session.Risk;
        var edit = ScenarioEdit.Set(TomlPath.Of("required_km"), TomlValue.Of(session.Model.Scenario.RequiredKm + round));
        double figure = console.Time(() => session.Apply(edit), () => risk.Fresh is not null);
        return (figure, figure + console.Time(() => { }, () => IsWhole(risk)));
    }

    /// <summary>The time from the key that starts it to the first ranking on the screen, ms.</summary>
    private static double Ranking(DrawnConsole console)
    {
        RankingPage page = console.State.Pages.OfType<RankingPage>().Single();
        console.Press(PageBook.Keys[console.State.Pages.ToList().IndexOf(page)]);
        bool hasBegun = false;
        double taken = console.Time(
            () => console.State.Press('r'), () => hasBegun |= page.Run.Result is not null && page.Run.Standing.Evaluations > 20_000);
        page.Run.Cancel();
        return taken;
    }

    /// <summary>The times from a key to the drawing that shows it, ms: other pages and rows, at moments the loop does not choose.</summary>
    private static IEnumerable<double> Pressed(DrawnConsole console, LiveRisk risk)
    {
        // Once each before it counts, as above.
        foreach (char page in PageBook.Keys)
        {
            console.Press(page);
            console.Press(KeyName.Down);
        }

        risk.Start(Endless);
        for (int i = 0; i < Keys; i++)
        {
            Thread.Sleep(20 + (i * 7 % 31));
            yield return console.Press(i % 2 == 0 ? PageBook.Keys[i / 2 % PageBook.Keys.Length] : KeyName.Down);
        }

        risk.Run.Cancel();
    }

    private static bool IsWhole(LiveRisk risk) =>
        risk is { Fresh.Run.IsPartial: false, Run: { IsSnapshot: false, Standing.Phase: RunPhase.Done } };

    private static Spent Measure(Action work)
    {
        using var process = Process.GetCurrentProcess();
        TimeSpan before = process.TotalProcessorTime;
        long start = Stopwatch.GetTimestamp();
        work();
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        process.Refresh();
        return new Spent(seconds, (process.TotalProcessorTime - before).TotalSeconds);
    }

    private static double Median(IEnumerable<double> values) => values.Order().ToArray() is var sorted ? sorted[sorted.Length / 2] : 0;

    private readonly record struct Spent(double Seconds, double Processor);
}
