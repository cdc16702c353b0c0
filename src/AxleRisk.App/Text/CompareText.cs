using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Files;

namespace AxleRisk.App.Text;

/// <summary>A comparison of scenarios as text.</summary>
internal static class CompareText
{
    /// <summary>The scenarios with their letters, above the answer.</summary>
    public static IEnumerable<TextLine> Head(IReadOnlyList<ScenarioDocument> documents) =>
        [.. documents.SelectMany((d, i) => Head(Letter(i), d)), TextLine.Empty];

    /// <summary>The method in words, for the line that tells how to repeat the run.</summary>
    public static string Method(ComparisonResult result) =>
        $"{result.Cases.Length} cases, each evaluated with these same samples, "
        + (result.IsConditional ? "exact failure probabilities given the damage averaged" : "failures counted");

    /// <summary>The defaults in force in any of them.</summary>
    public static IReadOnlyList<Assumption> Assumed(IReadOnlyList<ScenarioDocument> documents) =>
        [.. documents.SelectMany(d => Frame.Assumed(d.Scenario)).DistinctBy(a => a.Name)];

    private static IEnumerable<TextLine> Head(string letter, ScenarioDocument document) =>
    [
        $"{letter}  {TextTable.Shorten(Printable.Line(document.Scenario.Title), Layout.Width - 4)}",
        $"   {TextTable.Shorten(Printable.Line(document.FileName), Layout.Width - 26)}  digest {document.Digest[..12]}",
    ];

    /// <summary>How each scenario does against the first.</summary>
    public static IEnumerable<string> Sentences(ComparisonResult result)
    {
        string before = Figures.Probability(result.Cases[0].Probability.Estimate);
        string by = $"by {Figures.Exact(result.DistanceKm)} km";
        return result.Cases.Skip(1).Select((c, i) => c.Change!.IsRiskDistinct
            ? $"{Letter(i + 1)} fails {(c.Change.Difference.Estimate < 0 ? "less" : "more")} often than A: {Figures.Probability(c.Probability.Estimate)} instead of {before} {by}."
            : $"{Letter(i + 1)} is not distinguishable from A by its failure probability {by} ({before}).");
    }

    public static string Name(int index, ScenarioDocument document) =>
        $"{Letter(index)} {Printable.Line(Path.GetFileNameWithoutExtension(document.FileName))}";

    /// <summary>A, B, ... Z, then numbers.</summary>
    private static string Letter(int index) => index < 26 ? ((char)('A' + index)).ToString() : (index + 1).ToString();
}
