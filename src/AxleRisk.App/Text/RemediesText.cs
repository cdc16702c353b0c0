using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>Remedies as text.</summary>
internal static class RemediesText
{
    private const string BaseName = "as it is";

    public const string Heading = "The remedies";

    /// <summary>The best single remedy and the best pair in words.</summary>
    public static IEnumerable<string> Sentences(RemediesResult result) =>
        from what in new[] { (Name: "single remedy", Size: 1), (Name: "pair", Size: 2) }
        let best = result.Best(what.Size)
        where best is not null
        select Sentence(result, what.Name, best);

    /// <summary>The scenario as it is, then with each remedy or pair, under the names they are printed with.</summary>
    public static IReadOnlyList<(string Name, ComparedCase Case)> Cases(RemediesResult result) =>
        [(BaseName, result.Base), .. result.Rows.Select(r => (Printable.Line(r.Name), r.Case))];

    /// <summary>What a remedy changes.</summary>
    public static string Sentence(Scenario scenario, Remedy remedy) =>
        $"{Printable.Line(remedy.Name)}: {Changes(scenario, remedy)}{Cost(remedy.Cost, scenario.Currency)}";

    /// <summary>What a remedy makes of which inputs.</summary>
    public static string Changes(Scenario scenario, Remedy remedy) => Printable.Line(
        string.Join("; ", remedy.Changes.Select(c => $"{scenario.LabelOf(c.Input)} {DistributionText.Of(c)}")));

    private static string Sentence(RemediesResult result, string what, RemedyRow best)
    {
        string before = Figures.Probability(result.Base.Probability.Estimate);
        string after = Figures.Probability(best.Case.Probability.Estimate);
        return best.Case.Change is { IsRiskDistinct: true, Difference.Estimate: < 0 }
            ? $"The best {what} is {Printable.Line(best.Name)}: failure probability from {before} to {after}{Cost(best.Cost, result.Currency)}."
            : $"No {what} lowers the failure probability of {before} by more than this run can tell.";
    }

    private static string Cost(double? cost, string? currency) =>
        cost is double c ? $" (cost {Figures.Cost(c, currency)})" : "";
}
