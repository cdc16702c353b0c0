using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;

namespace AxleRisk.App.Text;

/// <summary>A comparison of scenarios as text.</summary>
internal static class CompareText
{
    public static IEnumerable<string> Lines(IReadOnlyList<ScenarioDocument> documents, ComparisonResult result) =>
    [
        .. documents.SelectMany((d, i) => Head(Letter(i), d)), "",
        .. Summary(result), "",
        .. ChangeTables.Lines(result.DistanceKm, [.. result.Cases.Select((c, i) => (Name(i, documents[i]), c))]),
    ];

    /// <summary>The method in words, for the line that tells how to repeat the run.</summary>
    public static string Method(ComparisonResult result) =>
        $"{result.Cases.Length} cases, each evaluated with these same samples, "
        + (result.IsConditional ? "exact failure probabilities given the damage averaged" : "failures counted");

    /// <summary>The first scenario with the defaults in force in any of them, for the list of what is assumed.</summary>
    public static Scenario AllAssumed(IReadOnlyList<ScenarioDocument> documents) => documents[0].Scenario with
    {
        Inputs = [.. documents.SelectMany(d => d.Scenario.Inputs).Where(i => i.IsDefault && i.Value is Value.Uncertain)
            .DistinctBy(i => i.Name)],
    };

    private static IEnumerable<string> Head(string letter, ScenarioDocument document) =>
    [
        $"{letter}  {TextTable.Shorten(Printable.Line(document.Scenario.Title), Layout.Width - 4)}",
        $"   {TextTable.Shorten(Printable.Line(document.FileName), Layout.Width - 26)}  digest {document.Digest[..12]}",
    ];

    private static IEnumerable<string> Summary(ComparisonResult result)
    {
        string before = Figures.Probability(result.Cases[0].Probability.Estimate);
        for (int i = 1; i < result.Cases.Length; i++)
        {
            ComparedCase c = result.Cases[i];
            string text = c.Change!.IsRiskDistinct
                ? $"{Letter(i)} fails {(c.Change.Difference.Estimate < 0 ? "less" : "more")} often than A: {Figures.Probability(c.Probability.Estimate)} instead of {before} by {Figures.Exact(result.DistanceKm)} km."
                : $"{Letter(i)} is not distinguishable from A by its failure probability by {Figures.Exact(result.DistanceKm)} km ({before}).";
            foreach (string line in Wrap.Lines(text, Layout.Width))
            {
                yield return line;
            }
        }
    }

    private static string Name(int index, ScenarioDocument document) =>
        $"{Letter(index)} {Printable.Line(Path.GetFileNameWithoutExtension(document.FileName))}";

    /// <summary>A, B, ... Z, then numbers.</summary>
    private static string Letter(int index) => index < 26 ? ((char)('A' + index)).ToString() : (index + 1).ToString();
}
