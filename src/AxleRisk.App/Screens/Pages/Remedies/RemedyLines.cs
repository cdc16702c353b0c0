using AxleRisk.App.Charts;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Screens.Pages.Remedies;

/// <summary>The remedies as a list with their switches, and what the chosen ones do.</summary>
internal static class RemedyLines
{
    /// <summary>The lines above the first remedy.</summary>
    public const int Above = 1;

    /// <summary>The list: two rows a remedy, its switch and what it changes.</summary>
    public static IReadOnlyList<PageLine> List(Scenario scenario, IReadOnlySet<string> on, int chosen, int width) =>
    [
        PageLine.Of(TextTable.Shorten("Remedies; [x] is switched on", width), Ink.Heading),
        .. scenario.Remedies.SelectMany((r, i) => Rows(scenario, r, on.Contains(r.Name), i == chosen, width)),
    ];

    /// <summary>What the chosen ones do together, and each alone.</summary>
    public static IEnumerable<PageLine> Of(RemedySetResult result, IEnumerable<Block> notes, TimeSpan elapsed, int width)
    {
        int room = Math.Min(width, Layout.Width);
        string by = $"by {Figures.Exact(result.Comparison.DistanceKm)} km";
        foreach (string line in Wrap.Lines($"With none: {Risk(result.None)} fail {by}; B10 {Life(result.None)}.", room))
        {
            yield return PageLine.Of(line);
        }

        if (result.Together is { Change: { } change } together)
        {
            string names = string.Join(" + ", result.Chosen.Select(r => Printable.Line(r.Name)));
            string[] sentences =
            [
                $"With {names}: {Risk(together)} fail {by}; B10 {Life(together)}.",
                change.IsRiskDistinct
                    ? $"Change: {HeadlineText.Points(change.Difference)} percentage points; {ChangeTables.Ratio(change.Ratio)} times as many failures (paired 95 % intervals)."
                    : $"Change: {HeadlineText.Points(change.Difference)} percentage points: not distinguishable from none (paired 95 % interval).",
                change.IsLifeDistinct
                    ? $"B10 life: {ChangeTables.Ratio(change.LifeRatio)} times as long." : "The B10 life is not distinguishable.",
                Cost(result),
            ];
            foreach ((string line, int i) in sentences.SelectMany((s, i) => Wrap.Lines(s, room).Select(l => (l, i))))
            {
                yield return PageLine.Of(line, i is 0 or 1 ? Ink.Strong : Ink.Plain);
            }
        }
        else
        {
            yield return PageLine.Of("None is switched on; space switches the chosen one.", Ink.Quiet);
        }

        yield return PageLine.Empty;
        yield return PageLine.Of($"Failed {by} (95 %), and how many times that with none", Ink.Heading);
        Bar[] bars =
        [
            Bar("none", result.None), .. result is { Together: { } t, Chosen.Length: > 1 } ? new[] { Bar("chosen together", t) } : [],
            .. result.All.Select((r, i) => Bar(Printable.Line(r.Name), result.Alone(i))),
        ];
        int text = bars.Max(b => b.Text.Length);
        foreach (PageLine line in Pictures.Lines(BarChart.Draw([.. bars.Select(b => b with { Text = b.Text.PadRight(text) })], room,
            bars.Length)))
        {
            yield return line;
        }

        yield return PageLine.Empty;
        foreach (PageLine line in (PageLine[])
            [
                .. PageLine.Of(notes, room), PageLine.Empty,
                .. PageLine.Of(Frame.Foot(
                    Frame.Run(result.Comparison.Run, Method(result.Comparison)), Frame.Partial(result.Comparison.Run), elapsed)),
            ])
        {
            yield return line;
        }
    }

    private static IEnumerable<PageLine> Rows(Scenario scenario, Remedy remedy, bool isOn, bool isChosen, int width)
    {
        string cost = remedy.Cost is double c ? $"  cost {Figures.Cost(c, scenario.Currency)}" : "";
        PageLine name = PageLine.Of(
            new Piece(isChosen ? "> " : "  "), new Piece(isOn ? "[x] " : "[ ] ", Ink.Strong),
                new Piece(TextTable.Shorten(Printable.Line(remedy.Name), Math.Max(4, width - 6 - cost.Length))),
                new Piece(cost, Ink.Quiet));
        yield return isChosen ? name.Fit(width).In(Ink.Chosen) : name;
        yield return PageLine.Of(TextTable.Shorten("      " + RemediesText.Changes(scenario, remedy), width), Ink.Quiet);
    }

    private static Bar Bar(string name, ComparedCase c) => new(
        name, c.Probability.Estimate, c.Probability.Low, c.Probability.High,
        $"{Figures.Probability(c.Probability.Estimate),9} {(c.Change is { } change ? ChangeTables.Ratio(change.Ratio) : ""),-20}{(c.Change is { IsRiskDistinct: false } ? " ~" : "  ")}");

    private static string Risk(ComparedCase c) =>
        $"{Figures.Probability(c.Probability.Estimate)} ({Figures.ProbabilityRange(c.Probability)})";

    private static string Life(ComparedCase c) =>
        $"{Figures.Km(c.B10Km.Estimate)} km ({Figures.Km(c.B10Km.Low)} to {Figures.Km(c.B10Km.High)})";

    private static string Cost(RemedySetResult result) =>
        result.Chosen.Aggregate((double?)0, (sum, r) => sum + r.Cost) is double cost
            ? $"Cost together {Figures.Cost(cost, result.Currency)}{(result.Currency is null ? ", in the scenario's own unit" : "")}." : "The cost of one of them is not stated.";

    private static string Method(ComparisonResult result) => $"{result.Cases.Length} cases, each with these same samples, "
        + (result.IsConditional ? "exact failure probabilities given the damage averaged" : "failures counted")
            + "; ~ not distinguishable from none";
}
