using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>Ranges of factors and shares of vehicles in words.</summary>
internal static class RangeWords
{
    /// <summary>A range as a reader would say it: <c>payload above 620 kg</c>, <c>weld category F</c>.</summary>
    public static string Of(AdverseRange range) => Of(range, range.Label);

    /// <summary>All of them, with <c>and</c> before the last.</summary>
    public static string Of(IReadOnlyList<AdverseRange> ranges) => Joined([.. ranges.Select(Of)]);

    /// <summary>The same with the inputs' keys, for other programs.</summary>
    public static string OfKeys(IReadOnlyList<AdverseRange> ranges) => Joined([.. ranges.Select(r => Of(r, r.Column))]);

    private static string Joined(string[] ranges) =>
        ranges.Length == 1 ? ranges[0] : string.Join(", ", ranges[..^1]) + " and " + ranges[^1];

    private static string Of(AdverseRange range, string of)
    {
        string unit = range.Factor.Unit.Length == 0 ? "" : $" {range.Factor.Unit}";
        string name = Printable.Line(of);
        return range.Part switch
        {
            RangePart.State when range.Factor is WordFactor => $"{name} {State(range)}",
            RangePart.State => $"{name} at {State(range)}{unit}",
            RangePart.Below => $"{name} below {Limit(range)}{unit}",
            _ => $"{name} above {Limit(range)}{unit}",
        };
    }

    /// <summary>How many vehicles are like this: <c>1 vehicle in 25</c>.</summary>
    public static string OneIn(double likelihood) =>
        !(likelihood > 0) ? "no vehicle" : likelihood > 0.4
            ? $"{Percent(likelihood)} of vehicles" : $"1 vehicle in {Figures.OneIn(likelihood)}";

    /// <summary>A probability to two figures or so: <c>31 %</c>, <c>4.2 %</c>.</summary>
    public static string Percent(double p) => double.IsNaN(p) ? Figures.None
        : p is > 0 and < 1e-4 ? Figures.Probability(p)
        : (100 * p).ToString(p < 1e-3 ? "0.###" : p < 0.1 ? "0.0" : "0") + " %";

    /// <summary>The state of a choice as the user would write it.</summary>
    public static string State(AdverseRange range) =>
        Printable.Line(range.Factor is WordFactor ? range.Factor.Show(range.Limit) : Figures.Number(range.Limit));

    private static string Limit(AdverseRange range) =>
        range.Factor is MixFactor ? $"{100 * range.Limit:0.#} %" : Rounded(range.Limit);

    /// <summary>Three figures are enough for the end of a fifth.</summary>
    private static string Rounded(double x) => Figures.Number(x == 0 ? 0 : double.Parse(x.ToString("G3")));
}
