using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>Remedies as text.</summary>
internal static class RemediesText
{
    private const string BaseName = "as it is";

    public static IEnumerable<string> Lines(Scenario scenario, RemediesResult result) =>
    [
        .. Sentence(result, "single remedy", 1), .. Sentence(result, "pair", 2), "",
        .. ChangeTables.Lines(
            result.Comparison.DistanceKm, [(BaseName, result.Base), .. result.Rows.Select(r => (Printable.Line(r.Name), r.Case))]),
        Style.Heading("The remedies"), .. scenario.Remedies.SelectMany(Remedy), "",
    ];

    /// <summary>The best of one size in words; nothing where there is none of that size.</summary>
    private static IEnumerable<string> Sentence(RemediesResult result, string what, int size)
    {
        if (result.Best(size) is not { } best)
        {
            return [];
        }

        string before = Figures.Probability(result.Base.Probability.Estimate);
        string after = Figures.Probability(best.Case.Probability.Estimate);
        string text = best.Case.Change is { IsRiskDistinct: true, Difference.Estimate: < 0 }
            ? $"The best {what} is {Printable.Line(best.Name)}: failure probability from {before} to {after}{Cost(best.Cost)}."
            : $"No {what} lowers the failure probability of {before} by more than this run can tell.";
        return Wrap.Lines(text, Layout.Width);
    }

    private static IEnumerable<string> Remedy(Remedy remedy)
    {
        string changes = string.Join("; ", remedy.Changes.Select(c => $"{c.Input} {c.Description}"));
        return Wrap.Lines($"{Printable.Line(remedy.Name)}: {Printable.Line(changes)}{Cost(remedy.Cost)}", Layout.Width - 2, "    ").Select(l => "  " + l);
    }

    private static string Cost(double? cost) => cost is double c ? $" (cost {c:#,0.##})" : "";
}
