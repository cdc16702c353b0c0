using AxleRisk.Core.Analyses.Ranking;

namespace AxleRisk.App.Text;

/// <summary>The ranking as text.</summary>
internal static class RankText
{
    public static IEnumerable<string> Lines(RankResult result) =>
    [
        $"Failure probability by {Figures.Km(result.RequiredKm)} km: {Figures.Probability(result.Probability.Estimate)}"
            + $" ({Figures.Probability(result.Probability.Low)} to {Figures.Probability(result.Probability.High)})",
        "",
        Style.Heading("What drives the spread of life (Sobol' indices of ln life, 95 % intervals)"),
        .. Indices(result, f => f.Life), "",
        Style.Heading("What drives failure before that distance (Sobol' indices of the event)"),
        .. Indices(result, f => f.Failure), "",
        Style.Heading("Failure probability with one factor held"), .. Pins(result), "",
        .. Reading(result), "",
    ];

    public static string Method(RankResult result) =>
        result.IsConditional
            ? "exact failure probabilities given the damage averaged"
            : "failures counted";

    private static IEnumerable<string> Indices(RankResult result, Func<RankedFactor, SobolPair> of)
    {
        var table = new TextTable("factor", "alone", "with others");
        foreach (RankedFactor f in result.Factors.OrderByDescending(f => of(f).Total.Estimate))
        {
            table.Add(f.Factor.Name + (f.RankedWith.IsEmpty ? "" : " *"), Figures.Index(of(f).First), Figures.Index(of(f).Total));
        }

        return table.Lines(Layout.Width);
    }

    private static IEnumerable<string> Pins(RankResult result)
    {
        var table = new TextTable("factor", "nominal", "at 5 % point", "at 95 % point", "more means");
        foreach (RankedFactor f in result.Factors)
        {
            table.Add(
                f.Factor.Name, Figures.Probability(f.AtNominal.Probability.Estimate),
                f.AtLow is { } low ? Figures.Probability(low.Probability.Estimate) : Figures.None,
                f.AtHigh is { } high ? Figures.Probability(high.Probability.Estimate) : Figures.None,
                f.Direction switch { > 0 => "more failures", < 0 => "fewer failures", _ => Figures.None });
        }

        return table.Lines(Layout.Width);
    }

    private static IEnumerable<string> Reading(RankResult result)
    {
        string text = "alone: share of the variance that knowing this factor would remove. with others: share that would "
            + "be left if all but this factor were known. Of a rare event, totals run high for every factor: compare them, do not add them.";
        if (result.Factors.Any(f => !f.RankedWith.IsEmpty))
        {
            text += " *: correlated with another factor; the indices are those of both together, and a held factor leaves the others as they are.";
        }

        return Wrap.Lines(text, Layout.Width, "");
    }
}
