using AxleRisk.App.Charts;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Screens.Pages.Ranking;

/// <summary>The ranking as bars, a row each, and one factor in a few sentences.</summary>
internal static class RankingList
{
    /// <summary>The lines above the first factor.</summary>
    public const int Above = 2;

    /// <summary>The bars: the share of the failures with its interval; the place before the name, = for a tie.</summary>
    public static IReadOnlyList<PageLine> Rows(RankResult result, int chosen, int width)
    {
        Bar[] bars = [.. result.Factors.Select((f, i) => new Bar(
            Printable.Line(f.Factor.Label), f.FailureShare.Estimate, Math.Max(0, f.FailureShare.Low), f.FailureShare.High,
            Percent(f.FailureShare))
        {
            Lead = $"{(i == chosen ? ">" : " ")}{f.Place,2}{(f.IsTied ? "=" : " ")} ",
            IsChosen = i == chosen,
        })];
        IReadOnlyList<PageLine> rows = Pictures.Lines(BarChart.Draw(bars, width, bars.Length));
        return
        [
            PageLine.Of(TextTable.Shorten("Share of the failures, % (95 % interval)", width), Ink.Heading),
            PageLine.Of(TextTable.Shorten("place (= tied); full to the lower end, ┤ upper", width), Ink.Quiet),
            .. rows,
        ];
    }

    /// <summary>What the ranking says of one factor.</summary>
    public static IEnumerable<PageLine> Of(RankResult result, RankedFactor f, int width)
    {
        string unit = f.Factor.Unit.Length > 0 ? $" {f.Factor.Unit}" : "";
        string heading = $"{Printable.Line(f.Factor.Label)} ({Printable.Line(f.Factor.Name)}): {DistributionText.Of(f.Factor)}{unit}";
        foreach (string line in Wrap.Lines(heading, width))
        {
            yield return PageLine.Of(line, Ink.Heading);
        }

        string[] sentences =
        [
            $"Place {f.Place}{Tied(result, f)}: {Percent(f.FailureShare)} % of the failures, {Percent(f.LifeShare)} % of the spread of life. {Knowledge(f)}",
            Alone(f), Held(f, unit),
        ];
        foreach (string line in sentences.Where(s => s.Length > 0).SelectMany(s => Wrap.Lines(s, width)))
        {
            yield return PageLine.Of(line);
        }
    }

    /// <summary>A share with its interval, in percent; what chance puts below 0 is shown as 0.</summary>
    public static string Percent(Interval share) => double.IsNaN(share.Estimate) ? Figures.None
        : double.IsNaN(share.Low) ? Tenths(share.Estimate)
        : $"{Tenths(share.Estimate)} ({Tenths(Math.Max(0, share.Low))}..{Tenths(Math.Clamp(share.High, 0, 1))})";

    private static string Tenths(double share) => (Math.Round(100 * share, 1) + 0.0).ToString("0.0").Replace("-0.0", "0.0");

    private static string Tied(RankResult result, RankedFactor factor)
    {
        string[] others = [.. result.Factors.Where(f => f != factor && factor.IsTied && f.Place == factor.Place)
            .Select(f => Printable.Line(f.Factor.Label))];
        return others.Length == 0
            ? "" : $", tied with {string.Join(", ", others.Take(3))}{(others.Length > 3 ? $" and {others.Length - 3} more" : "")}";
    }

    private static string Knowledge(RankedFactor f) => f.Factor.Knowledge == Core.Scenarios.Knowledge.Varies
        ? "It varies between vehicles." : "It is unknown: better data can remove its share.";

    private static string Alone(RankedFactor f)
    {
        (Interval first, Interval total) = (f.Failure.First, f.Failure.Total);
        if (double.IsNaN(first.Estimate) || double.IsNaN(total.Estimate))
        {
            return "";
        }

        string how = total.Estimate > 2 * Math.Max(first.Estimate, 0) && total.Estimate > first.High
            ? "it acts mostly together with others" : "it acts much by itself";
        string group = f.RankedWith.IsEmpty ? "" : $" (together with {string.Join(", ", f.RankedWith.Select(o => o.Label))}, with which it is correlated)";
        return $"Alone {Figures.Index(first)}, with others {Figures.Index(total)}: {how}{group}.";
    }

    private static string Held(RankedFactor f, string unit)
    {
        string At(string what, Pinned? p) =>
            p is null ? "" : $"{what}{(double.IsNaN(p.Value) ? "" : $" {f.Factor.Show(p.Value)}{unit}")}: {Figures.Probability(p.Probability.Estimate)}";
        string means = f.Direction switch
        { > 0 => "; more of it means more failures", < 0 => "; more of it means fewer failures", _ => "" };
        string[] parts = [.. new[] { At("5 % point", f.AtLow), At("nominal", f.AtNominal), At("95 % point", f.AtHigh) }
            .Where(t => t.Length > 0)];
        return $"Held at {string.Join(", ", parts)} fail{means}.";
    }
}
