using AxleRisk.App.Charts;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Combinations;

namespace AxleRisk.App.Screens.Pages.Combinations;

/// <summary>The pairs of the strongest factors as a grid: the digits tell, the shade behind them is for the eye.</summary>
internal static class PairGrid
{
    private const int NarrowestName = 14;
    private const int CellWidth = 5;

    /// <summary>The ratio from which on a cell has the full shade; its inverse likewise.</summary>
    private const double StrongRatio = 1.5;

    private static readonly string Shades = " ░▒▓";

    /// <summary>The grid under its heading, with the legend below.</summary>
    public static IReadOnlyList<PageLine> Lines(CombineResult result, PairMeasure measure, int width)
    {
        (string[] names, Func<int, int, double> value) = measure == PairMeasure.Interaction
            ? Interactions(result) : Ranges(result, measure);
        if (names.Length < 2)
        {
            return [PageLine.Of(Heading(measure), Ink.Heading), PageLine.Of("  Fewer than two factors have pairs to show.", Ink.Quiet)];
        }

        double most = Enumerable.Range(0, names.Length)
            .SelectMany(i => Enumerable.Range(0, names.Length).Select(j => Math.Abs(value(i, j)))).Where(double.IsFinite).DefaultIfEmpty(0)
            .Max();
        double strong = measure == PairMeasure.Ratio ? Math.Log(StrongRatio) : most > 0 ? 0.75 * most : 1;
        int nameWidth = Math.Max(NarrowestName, Math.Min(width, Layout.Width) - 4 - (CellWidth * names.Length));
        Picture picture = HeatGrid.Draw(
            TextTable.Shorten(names, nameWidth), value, x => Cell(x, measure) + Shade(Math.Abs(x), strong), strong,
                width, names.Length + 1);
        return
        [
            PageLine.Of(Heading(measure), Ink.Heading), .. Pictures.Lines(picture),
            PageLine.Of(TextTable.Shorten(Legend(measure), width), Ink.Quiet),
        ];
    }

    private static string Heading(PairMeasure measure) => measure switch
    {
        PairMeasure.Together => "Pairs: % that fail with both in their adverse fifth or state",
        PairMeasure.Ratio => "Pairs: how many times what the two would give if they multiplied",
        _ => "Pairs: Shapley interaction, % of the variance of failure",
    };

    private static string Legend(PairMeasure measure) => measure switch
    {
        PairMeasure.Together => "diagonal: the one alone; ░ ▒ ▓ more and more, ▓ from 3/4 of the most; · too few",
        PairMeasure.Ratio => $"1 multiplies; ░ ▒ ▓ further from 1, ▓ from {StrongRatio} times on; · too few or not worse",
        _ => "more than 0: together they do more than each alone; ░ ▒ ▓ larger",
    };

    private static string Cell(double x, PairMeasure measure) => measure switch
    {
        PairMeasure.Together => 100 * x >= 9.95 ? $"{100 * x:0}" : 100 * x >= 0.05 || x == 0 ? $"{100 * x:0.0}" : "<.1",
        PairMeasure.Ratio => Math.Exp(x) >= 9.95 ? $"{Math.Exp(x):0}" : $"{Math.Exp(x):0.0}",
        _ => $"{100 * x:0}".Replace("-0", "0"),
    };

    private static char Shade(double size, double strong) => Shades[(int)Math.Clamp(Math.Floor(3 * size / strong), 0, 3)];

    /// <summary>The worst ranges of each column; of several pairs of two columns the one with the most failures.</summary>
    private static (string[] Names, Func<int, int, double> Value) Ranges(CombineResult result, PairMeasure measure)
    {
        AdverseRange[] paired = [.. result.Pairs.SelectMany(p => new[] { p.First, p.Second })];
        (string Column, string Label, double Alone)[] columns =
        [
            .. paired.GroupBy(r => r.Column).Select(g => (g.Key, g.First().Label, g.Max(r => r.Probability.Estimate)))
                .OrderByDescending(c => c.Item3),
        ];
        ILookup<(string, string), PairEffect> byColumns = result.Pairs
            .SelectMany(p => new[] { (Key: (p.First.Column, p.Second.Column), p), (Key: (p.Second.Column, p.First.Column), p) })
                .ToLookup(x => x.Key, x => x.p);
        return ([.. columns.Select(c => Printable.Line(c.Label))], (i, j) =>
            i == j ? measure == PairMeasure.Together ? columns[i].Alone : double.NaN
            : byColumns[(columns[i].Column, columns[j].Column)].MaxBy(p => p.Together.Estimate) is { } pair
                ? measure == PairMeasure.Together ? pair.Together.Estimate : Math.Log(pair.Ratio.Estimate)
                : double.NaN);
    }

    private static (string[] Names, Func<int, int, double> Value) Interactions(CombineResult result)
    {
        (string First, string Second, double Shapley)[] pairs =
            [.. result.Interactions.Select(i => (Printable.Line(i.FirstLabel), Printable.Line(i.SecondLabel), i.Shapley.Estimate))];
        string[] names = [.. pairs.SelectMany(p => new[] { p.First, p.Second }).Distinct()];
        return (names, (i, j) => pairs
            .Where(p => (p.First, p.Second) == (names[i], names[j]) || (p.First, p.Second) == (names[j], names[i]))
            .Select(p => p.Shapley).FirstOrDefault(double.NaN));
    }
}
