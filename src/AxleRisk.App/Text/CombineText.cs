using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Text;

/// <summary>Combined effects as text.</summary>
internal static class CombineText
{
    /// <summary>The most pairs printed; the JSON answer has all.</summary>
    private const int MostPairs = 8;

    /// <summary>Characters of each of two names beside each other.</summary>
    private const int LongestName = 24;

    public const string WorstHeading = "The worst combinations";
    public const string PairsHeading = "Pairs against what they would give if their effects multiplied";
    public const string InteractionsHeading = "Interaction of two factors, share of the variance of failure";
    public const string NoInteractions = "Not computed: fewer than two independent factors, or the run was ended early.";

    public static string Method(CombineResult result) =>
        result.IsConditional ? "exact failure probabilities given the damage averaged" : "failures counted";

    /// <summary>One combination as a sentence.</summary>
    public static string Sentence(Combination c) =>
        $"{RangeWords.Of(c.Members)}: {RangeWords.Percent(c.Probability.Estimate)} fail ({Range(c.Probability)}; "
        + $"{c.Lift.Estimate:0.0} times the average); {RangeWords.OneIn(c.Likelihood)} is like this; "
        + $"{RangeWords.Percent(c.Coverage.Estimate)} of all failures."
        + (c.ExceedsParts ? $" Worse than its parts: multiplied they would give {RangeWords.Percent(c.Multiplied.Estimate)}." : "");

    /// <summary>Why there is no combination to list.</summary>
    public static string NoneListed(SearchRecord searched) => searched.Eligible == 0
        ? "None has enough failures behind it to be judged: take more --evaluations."
        : "None stands out from chance.";

    /// <summary>What was searched, and what the claims are corrected for.</summary>
    public static string Searched(SearchRecord searched) =>
        $"Searched: {Figures.Count(searched.Evaluated)} combinations of {searched.Ranges} adverse fifths and states over "
        + $"{Figures.Count(searched.Rows)} vehicles; those left out contain one with fewer than {searched.Limits.LeastRows} vehicles or less "
        + $"than {RangeWords.Percent(searched.Limits.LeastCoverage)} of the failures. {Figures.Count(searched.Eligible)} were ranked; claims are "
        + $"corrected for {searched.Possible:#,0}, both ends of every factor counted.";

    /// <summary>The pairs told of.</summary>
    public static IReadOnlyList<PairEffect> Told(CombineResult result) => [.. result.Pairs.Where(p => p.IsNotable).Take(MostPairs)];

    /// <summary>One pair as a sentence.</summary>
    public static string Sentence(PairEffect p) =>
        $"{RangeWords.Of([p.First, p.Second])}: {RangeWords.Percent(p.Together.Estimate)} fail ({Range(p.Together)}); multiplied "
        + $"{RangeWords.Percent(p.Multiplied.Estimate)}; ratio {Figures.Index(p.Ratio)}; {RangeWords.OneIn(p.Likelihood)}."
        + (p.AreCorrelated ? " Correlated: the product counts what they share twice." : "");

    /// <summary>How many pairs there are, and how many of them are told of.</summary>
    public static string PairsTold(CombineResult result)
    {
        int notable = result.Pairs.Count(p => p.IsNotable);
        return result.Pairs.IsEmpty ? "None has enough vehicles."
            : notable == 0 ? $"None of {result.Pairs.Length} pairs departs from that beyond chance."
            : $"{notable} of {result.Pairs.Length} pairs depart from that beyond chance; {Told(result).Count} shown.";
    }

    public static TextTable InteractionTable(CombineResult result)
    {
        var table = new TextTable("factor", "<with", "second order", "Shapley");
        InteractionPair[] shown = [.. result.Interactions.Take(MostPairs)];
        string[] names = TextTable.Shorten(
            [.. shown.SelectMany(p => new[] { Printable.Line(p.FirstLabel), Printable.Line(p.SecondLabel) })], LongestName);
        foreach ((InteractionPair p, int i) in shown.Select((p, i) => (p, i)))
        {
            table.AddNoted(p.First, names[2 * i], names[(2 * i) + 1], Index(p.SecondOrder), Index(p.Shapley));
        }

        return table;
    }

    public static string Reading(CombineResult result) =>
        "The adverse fifth of a factor is the fifth of vehicles at its worse end. A combination is listed where each of its "
        + "members makes it worse beyond chance (corrected for the number that could be made) and it covers other failures than those "
        + "above it. Multiplied: what two effects would give if each multiplied the average by its own factor. "
        + $"Pairs and interactions are those of the {result.Searched.Limits.StrongestFactors} factors that are strongest alone. "
        + "Of a choice only its worse states are paired. second order: what two explain together beyond what each explains. Shapley: the same, averaged over what else is known. "
        + "Intervals are 95 %.";

    /// <summary>Two decimals and half of the interval, which is symmetric.</summary>
    private static string Index(Interval i) => double.IsNaN(i.Estimate)
        ? Figures.None
        : $"{Math.Round(i.Estimate, 2) + 0.0:0.00} +-{(i.High - i.Low) / 2:0.00}".Replace("-0.00 ", "0.00 ");

    private static string Range(Interval p) => $"{RangeWords.Percent(p.Low).Replace(" %", "")} to {RangeWords.Percent(p.High)}";
}
