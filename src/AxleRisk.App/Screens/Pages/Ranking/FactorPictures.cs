using AxleRisk.App.Charts;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Screens.Pages.Ranking;

/// <summary>The failure probability across the range of a factor, drawn and in words.</summary>
internal static class FactorPictures
{
    /// <summary>What the factor is.</summary>
    public static IEnumerable<PageLine> Head(FactorRangeResult result, int width)
    {
        Factor f = result.Factor;
        string knowledge = f.Knowledge == Knowledge.Varies ? "varies between vehicles" : "unknown, one value for all";
        yield return PageLine.Of(TextTable.Shorten($"{Printable.Line(f.Label)} ({Printable.Line(f.Name)}): {DistributionText.Of(f)}{Unit(f)}, {knowledge}", width),
            Ink.Heading);
    }

    /// <summary>A curve over a continuous factor; bars of the states of a choice.</summary>
    public static IReadOnlyList<PageLine> Across(FactorRangeResult result, int width, int height)
    {
        Factor f = result.Factor;
        if (f is not ScalarFactor { Distribution: not Core.Distributions.NumberChoice })
        {
            Bar[] bars =
            [
                .. result.Points.Select(p => Row(double.IsNaN(p.Value)
                    ? "held at the stated shares" : $"{Printable.Line(f.Show(p.Value))}{Unit(f)}", p.Case.Probability)),
                Row("free, as it is", result.Base.Probability),
            ];
            return
            [
                PageLine.Of($"Failed by {Figures.Exact(result.DistanceKm)} km with the factor held (95 %)", Ink.Quiet),
                .. Pictures.Lines(BarChart.Draw(bars, width, bars.Length)),
            ];
        }

        double[] x = [.. result.Points.Select(p => p.Value)];
        double[] Ends(Func<Interval, double> end) => [.. result.Points.Select(p => end(p.Case.Probability))];
        double average = result.Base.Probability.Estimate;
        return Pictures.Lines(new LineChart(
            new ChartAxis($"{Printable.Line(f.Label)}{(f.Unit.Length > 0 ? $", {f.Unit}" : "")}; 1 % to 99 % point"),
            new ChartAxis($"failed by {Figures.Exact(result.DistanceKm)} km", Label: Ticks.Percent))
        {
            Series = [new ChartSeries("held", x, Ends(p => p.Estimate)),
                new ChartSeries("free", [x[0], x[^1]], [average, average], Dash.Dotted)],
            Bands = [new ChartBand("95 %", x, Ends(p => p.Low), Ends(p => p.High))],
            Marks = [new ChartMark(f.Nominal[0], "base case")],
        }.Draw(width, height));
    }

    /// <summary>The spread, the direction and every point in words.</summary>
    public static IEnumerable<string> Reading(FactorRangeResult result, int width)
    {
        Factor f = result.Factor;
        HeldPoint[] points = [.. result.Points];
        if (f is not ScalarFactor { Distribution: not Core.Distributions.NumberChoice }
            || points.Length < FactorRangeAnalysis.Levels.Length)
        {
            return points.Length < 2 ? [] : Wrap.Lines(
                $"The states differ by {Figures.Ratio(points.Max(p => p.Case.Probability.Estimate) / points.Min(p => p.Case.Probability.Estimate))} times from the best to the worst.", width, "");
        }

        HeldPoint At(double level) => points.MinBy(p => Math.Abs(p.Level - level))!;
        (HeldPoint low, HeldPoint high) = (At(0.05), At(0.95));
        string direction = high.Case.Probability.Low > low.Case.Probability.High ? "More of it means more failures."
            : high.Case.Probability.High < low.Case.Probability.Low ? "More of it means fewer failures."
            : "The two ends cannot be told apart.";
        var table = new TextTable("held at", "value", "fails", "95 % interval", "times as it is");
        foreach (HeldPoint p in points)
        {
            table.Add(
                $"{100 * p.Level:0} % point", Figures.Number(p.Value), Figures.Probability(p.Case.Probability.Estimate),
                Figures.ProbabilityRange(p.Case.Probability), ChangeTables.Ratio(p.Case.Change!.Ratio));
        }

        return
        [
            .. Wrap.Lines(
                $"From its 5 % to its 95 % point ({Figures.Number(low.Value)} to {Figures.Number(high.Value)}{Unit(f)}) the failure probability goes from "
                + $"{Figures.Probability(low.Case.Probability.Estimate)} to {Figures.Probability(high.Case.Probability.Estimate)}. {direction}", width, ""),
            "", .. TableLines.Of(table.Captioned(""), width),
        ];
    }

    private static Bar Row(string name, Interval p) =>
        new(name, p.Estimate, p.Low, p.High, $"{Figures.Probability(p.Estimate)} ({Figures.ProbabilityRange(p)})");

    private static string Unit(Factor f) => f.Unit.Length > 0 ? $" {f.Unit}" : "";
}
