using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Tests.Commands;

namespace AxleRisk.App.Tests.Screens.Pages;

/// <summary>Pages of shipped scenarios as states, with short studies.</summary>
internal static class Opened
{
    public static Session Session(string scenario) =>
        new(EditedScenario.Open(Cli.Shipped(scenario)), TimeProvider.System, HeadlessConsole.FewEvaluations);

    /// <summary>Runs the study of a page with so many evaluations.</summary>
    public static void Study<T>(StudyPage<T> page, long evaluations)
        where T : class
    {
        page.ChosenEvaluations = evaluations;
        page.Start();
        Patience.Until(page.Run.Completion);
        if (page.Run.Result is null)
        {
            throw new InvalidOperationException($"no result of {evaluations}: {page.Run.Standing.Failure}");
        }
    }

    public static string Text(Page page, int width = 80, int height = 400) =>
        string.Join('\n', page.Lines(width, height).Select(l => l.Text.TrimEnd()));

    public static bool HasKey(Page page, string key) => page.Keys.Any(k => k.Key == key);
}
