using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Text;

/// <summary>The two tables of a comparison: failure probabilities and B10 lives, each with its change against the first row.</summary>
internal static class ChangeTables
{
    private const string Same = "not distinguishable";

    public const string LifeHeading = "B10 life, the distance by which a tenth has failed";
    public const string TimesOfFirst = "; how many times that of the first row";

    public static string RiskHeading(double distanceKm) => RiskText.Question(distanceKm) + TimesOfFirst;

    public static TextTable RiskTable(IReadOnlyList<(string Name, ComparedCase Case)> rows) =>
        Table("failed", rows, c => Figures.Probability(c.Probability.Estimate), c => c.Ratio, c => c.IsRiskDistinct);

    public static TextTable LifeTable(IReadOnlyList<(string Name, ComparedCase Case)> rows) =>
        Table("km", rows, c => Figures.Km(c.B10Km.Estimate), c => c.LifeRatio, c => c.IsLifeDistinct);

    /// <summary>A ratio with its interval, to the digits that the interval leaves: <c>0.282 (0.275..0.289)</c>.</summary>
    public static string Ratio(Interval ratio)
    {
        double width = ratio.High - ratio.Low;
        if (double.IsNaN(ratio.Estimate))
        {
            return Figures.None;
        }

        if (!double.IsFinite(width))
        {
            return Figures.Ratio(ratio.Estimate);
        }

        int decimals = width > 0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(width)), 0, 6) : 3;
        string format = "F" + decimals;
        return $"{ratio.Estimate.ToString(format)} ({ratio.Low.ToString(format)}..{ratio.High.ToString(format)})";
    }

    private static TextTable Table(
        string figure, IReadOnlyList<(string Name, ComparedCase Case)> rows, Func<ComparedCase, string> show,
            Func<CaseChange, Interval> ratio, Func<CaseChange, bool> isDistinct)
    {
        var table = new TextTable("case", figure, "times (95 %)", "<");
        foreach ((string name, ComparedCase c) in rows)
        {
            table.Add(
                name, show(c), c.Change is { } change ? Ratio(ratio(change)) : "",
                c.Change is { } of && !isDistinct(of) && !double.IsNaN(ratio(of).Estimate) ? Same : "");
        }

        return table;
    }
}
