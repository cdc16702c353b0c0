using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>The ranking as text.</summary>
internal static class RankText
{
    /// <summary>Characters of a bar of 100 %.</summary>
    private const int BarLength = 12;

    /// <summary>An index that two decimals show as 0.</summary>
    public const double LeastShown = 0.005;

    public const string LegsHeading = "Which leg does the damage, among the vehicles that fail";
    public const string PinsHeading = "Failure probability with one factor held";

    /// <summary>How to read the shares.</summary>
    public static string SharesReading(RankResult result) =>
        "share: the factor's fair part of the variance, Shapley effect; all shares sum to 100 %. "
        + (result.Factors.Any(f => f.IsTied) ? "Factors of one place (=) are tied: their intervals overlap. " : "")
        + "What varies between vehicles only another design or use can change; what is unknown, better data can remove.";

    public const string IndicesReading =
        "alone: share of the variance that knowing this factor would remove. with others: share that would "
        + "be left if all but this factor were known. Of a rare event, totals run high for every factor: compare them, do not add them.";

    public static string SharesHeading(RankResult result) =>
        $"Share of failure by {Figures.Exact(result.RequiredKm)} km and of the spread of life, % (95 % intervals)";

    /// <summary>The speed of a run, to follow its time.</summary>
    public static string Speed(RankResult result, TimeSpan elapsed) =>
        $": {Figures.Number(Math.Round(result.Run.Evaluations / elapsed.TotalSeconds / 1e6, 2))} million evaluations a second";

    public static string Method(RankResult result)
    {
        string events = result.IsConditional ? "exact failure probabilities given the damage averaged" : "failures counted";
        string shares = result.ShareMethod == ShareMethod.AllSubsets
            ? $"shares by all subsets of the factors, as asked, on {Figures.Count(result.SharePairs)} pairs of scrambled Sobol' rows"
            : $"shares by {Figures.Count(result.SharePairs)} random orders of the factors, the cheapest way, each on a pair of scrambled Sobol' rows";
        return $"{events}, {shares}; {Width(result)}";
    }

    /// <summary>How wide the widest interval of a share is, and why the run ended there.</summary>
    private static string Width(RankResult result)
    {
        string reached = double.IsFinite(result.WidestHalf)
            ? $"the widest interval of a factor's share is {PlusMinus(result.WidestHalf)}"
            : "the share of a factor is unknown";
        return result.HalfWidthAsked == 0 || result.Run.IsPartial ? reached
            : result.WidestHalf <= result.HalfWidthAsked
                ? $"{reached}, enough for the {PlusMinus(result.HalfWidthAsked)} that the run went for"
            : $"{reached}, not the {PlusMinus(result.HalfWidthAsked)} that the run went for: more evaluations than its limit (--evaluations) would narrow it";
    }

    private static string PlusMinus(double half) =>
        $"+-{Figures.Number(Math.Round(100 * half, 2))} {(half == RankQuestion.UsualHalfWidth ? "point" : "points")}";

    public static TextTable ShareTable(RankResult result)
    {
        var table = new TextTable("factor", "place", "failure", "", "#", "life");
        foreach (RankedFactor f in result.Factors)
        {
            table.AddNoted(
                f.Factor.Name, f.Factor.Label, $"{f.Place}{(f.IsTied ? "=" : " ")}", Percent(f.FailureShare.Estimate), Range(f.FailureShare),
                Bar(f.FailureShare.Estimate), PlusMinus(f.LifeShare));
        }

        foreach (KnowledgeShare k in result.ByKnowledge.Where(k => k.Factors > 0))
        {
            string name = k.Knowledge == Knowledge.Varies ? "all that varies" : "all that is unknown";
            table.Add(name, "", Percent(k.Failure.Estimate), Range(k.Failure), Bar(k.Failure.Estimate), PlusMinus(k.Life));
        }

        return table;
    }

    public static TextTable LegTable(RankResult result)
    {
        var table = new TextTable("leg", "of damage", "", "#");
        foreach (LegOfFailures leg in result.Legs)
        {
            table.Add(leg.Name, Percent(leg.DamageShare.Estimate), Range(leg.DamageShare), Bar(leg.DamageShare.Estimate));
        }

        return table;
    }

    public static TextTable PinTable(RankResult result)
    {
        var table = new TextTable("factor", "nominal", "at 5 % point", "at 95 % point", "more means");
        foreach (RankedFactor f in result.Factors)
        {
            table.AddNoted(
                f.Factor.Name, f.Factor.Label, Figures.Probability(f.AtNominal.Probability.Estimate),
                f.AtLow is { } low ? Figures.Probability(low.Probability.Estimate) : Figures.None,
                f.AtHigh is { } high ? Figures.Probability(high.Probability.Estimate) : Figures.None,
                f.Direction switch { > 0 => "more failures", < 0 => "fewer failures", _ => Figures.None });
        }

        return table;
    }

    /// <summary>Sobol' indices, and how many factors are left out because theirs are nearly 0.</summary>
    public static (TextTable Table, int LeftOut) IndexTable(RankResult result, Func<RankedFactor, SobolPair> of)
    {
        var table = new TextTable("factor", "alone", "with others");
        foreach (RankedFactor f in result.Factors.Where(f => IsShown(of(f))))
        {
            table.AddNoted(
                f.Factor.Name, (f.RankedWith.IsEmpty ? "" : "* ") + f.Factor.Label, Figures.Index(of(f).First),
                Figures.Index(of(f).Total));
        }

        return (table, result.Factors.Length - table.Count);
    }

    private static bool IsShown(SobolPair indices) => !(indices.Total.Estimate < LeastShown && indices.First.Estimate < LeastShown);

    /// <summary>What to know of correlated factors; nothing where the tables of indices show none.</summary>
    public static IEnumerable<string> CorrelatedReading(RankResult result) =>
        result.Factors.All(f => f.RankedWith.IsEmpty || !(IsShown(f.Failure) || IsShown(f.Life)))
        ? []
        :
        [
            "*: correlated with another factor; the indices are those of both together, and a held factor leaves the others as they are. "
                + "Its share is its own.",
        ];

    /// <summary>A share in percent with its interval: <c>24.1 % (23.6..24.7)</c>.</summary>
    public static string ShareWithRange(Interval share) =>
        double.IsNaN(share.Estimate) ? Figures.None : $"{Tenths(share.Estimate)} % ({Range(share)})";

    private static string Percent(double share) => double.IsNaN(share) ? Figures.None : Tenths(share);

    /// <summary>An interval in percent. A share is not negative: what chance puts below 0 is shown as 0.</summary>
    private static string Range(Interval share) =>
        double.IsNaN(share.Low) ? "" : $"{Tenths(Math.Max(0, share.Low))}..{Tenths(Math.Clamp(share.High, 0, 1))}";

    private static string PlusMinus(Interval share) =>
        double.IsNaN(share.Low) ? Percent(share.Estimate) : $"{Tenths(share.Estimate)} +-{Tenths((share.High - share.Low) / 2)}";

    private static string Tenths(double share)
    {
        string text = (100 * share).ToString("0.0");
        return text == "-0.0" ? "0.0" : text;
    }

    private static string Bar(double share) =>
        double.IsNaN(share) ? "" : new('#', (int)Math.Clamp(Math.Round(BarLength * share), 0, BarLength));
}
