using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Pages.Causes;
using AxleRisk.App.Screens.Pages.Remedies;
using AxleRisk.App.Screens.Shell;
using AxleRisk.App.Tests.Commands;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Terminal.Gui.Input;
using Xunit;
using static AxleRisk.App.Tests.Screens.HeadlessConsole;

namespace AxleRisk.App.Tests.Screens.Shell;

/// <summary>The bottom line. That the way out and the way to help are always in sight: common practice, no source.</summary>
public sealed class KeyLineTests
{
    private static readonly KeyHint[] Many =
    [
        new("Enter", "change"), new("e", "evaluations", KeyWorth.Spare), new("r", "run", KeyWorth.Main), new("Del", "take out"),
        new("?", "explain", KeyWorth.Always), new("o", "open", KeyWorth.Spare), new("q", "quit", KeyWorth.Always),
    ];

    /// <summary>Evidence that can be taken out and a remedy: what gives the pages Causes and Remedies all their keys.</summary>
    private const string Stated =
        """

        [evidence]
        failed_between_km = [50000, 150000]

        [[remedies]]
        name = "thicker tube"
        change = { "axle.wall_mm" = 8.5 }
        """;

    [Theory]
    [InlineData(200, " Enter change  e evaluations  r run  Del take out  ? explain  o open  q quit")]
    [InlineData(76, " Enter change  e evaluations  r run  Del take out  ? explain  o open  q quit")]
    [InlineData(75, " Enter change  e evaluations  r run  Del take out  ? explain  q quit")]
    [InlineData(61, " Enter change  r run  Del take out  ? explain  o open  q quit")]
    [InlineData(40, " Enter change  r run  ? explain  q quit")]
    [InlineData(25, " r run  ? explain  q quit")]
    [InlineData(18, " ? explain  q quit")]
    [InlineData(17, " r run  ? explain")]
    [InlineData(5, "")]
    public void What_would_be_missed_least_is_left_out(int width, string line)
    {
        PageLine shown = KeyLine.Of(Many, width);
        Assert.Equal(width, shown.Length);
        Assert.Equal(line, shown.Text.TrimEnd());
    }

    [Property]
    public Property Whatever_else_there_is_the_line_is_as_wide_as_asked_and_holds_both(byte room, PositiveInt[] lengths)
    {
        int width = 18 + (room % 120);
        IEnumerable<KeyHint> others =
            lengths.Select((n, i) => new KeyHint(new string('k', 1 + (n.Get % 6)), new string('d', 1 + (n.Get % 14)),
            (KeyWorth)(1 + (i % 3))));
        PageLine line = KeyLine.Of([.. others, new("?", "explain", KeyWorth.Always), new("q", "quit", KeyWorth.Always)], width);
        return (line.Length == width && line.Text.Contains(" ? explain  ", StringComparison.Ordinal)
            && line.Text.Contains("q quit", StringComparison.Ordinal)).ToProperty();
    }

    [Fact]
    public void All_pages_show_how_to_get_help_and_how_to_leave()
    {
        var seen = new List<(string Name, string Line)>();
        Action<Step> look = step => seen.Add((step.State.Front.Name, step.Screen.Split('\n').Select(l => l.TrimEnd('\r')).ElementAt(23)));
        Action<Step>[] All() => [.. PageBook.Keys.SelectMany(k => new[] { Keys(new Key(k)), Pause(), look })];
        HeadlessConsole.Run(
            console => console.Show(EditedScenario.Open(FewFactors.With(Stated))), [], 80, 24,
            [
                .. All(),

                // The pages with most keys, now with results; and changes that can be saved and taken back.
                s =>
                {
                    CausesPage causes = s.State.Pages.OfType<CausesPage>().Single();
                    RemediesPage remedies = s.State.Pages.OfType<RemediesPage>().Single();
                    causes.ChosenEvaluations = 1000;
                    remedies.ChosenEvaluations = 200;
                    causes.Start();
                    remedies.Start();
                },
                Until(s => s.Pages.OfType<CausesPage>().Single().Run.Completion),
                Until(s => s.Pages.OfType<RemediesPage>().Single().Run.Completion),
                Keys(Key.D1), Pause(), Keys(Key.CursorDown, Key.Enter), Pause(), Pause(), Keys(Key.A.WithCtrl), Type("90000"),
                Keys(Key.Enter), Pause(), Pause(),
                .. All(),
            ]);
        Assert.Equal(2 * PageBook.Keys.Length, seen.Count);
        Assert.True(seen.Select(s => s.Name).Distinct().Count() > 10);
        Assert.All(seen, s => Assert.Contains(" ? explain  ", s.Line, StringComparison.Ordinal));
        Assert.All(seen, s => Assert.EndsWith("q quit", s.Line.TrimEnd(), StringComparison.Ordinal));

        // What was dropped before this test was written: the line of these was full without them.
        Assert.Contains(seen, s => s is { Name: "Causes" } && s.Line.Contains("r run again", StringComparison.Ordinal));
        Assert.Contains(seen, s => s is { Name: "Remedies" }
            && s.Line.Contains("Space on/off  Enter change  a add  Del take out  r run again", StringComparison.Ordinal));
        Assert.Contains(seen, s => s.Line.Contains("Ctrl+S save", StringComparison.Ordinal));
    }
}
