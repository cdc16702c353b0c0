using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Numerics;
using AxleRisk.Files;

namespace AxleRisk.App.Documents;

/// <summary>A comparison of scenarios as JSON and as rows.</summary>
internal static class CompareDocument
{
    /// <summary>What all comparisons state.</summary>
    public static JsonForm<ComparisonResult> Common { get; } = new JsonForm<ComparisonResult>()
        .Number("distance_km", "the distance of the failure probabilities, km", r => r.DistanceKm)
        .Word("method", "how they are found: exactly given the damage, or by counting", CommonForms.EventMethods,
            r => r.IsConditional ? "conditional" : "crude");

    /// <summary>One case; its change is null for the first.</summary>
    public static JsonForm<ComparedCase> Case { get; } = new JsonForm<ComparedCase>("case")
        .Probability("failure_probability", "failure probability by the distance", c => c.Probability)
        .Interval("b10_km", "distance by which one in ten has failed, km", c => c.B10Km)
        .Object("change", "against the first case, from the same random numbers; null for the first", new JsonForm<CaseChange>()
            .Interval("difference", "of the failure probabilities, negative where fewer fail", c => c.Difference)
            .Interval("ratio", "of the failure probabilities", c => c.Ratio)
            .Interval("b10_ratio", "of the B10 lives, above 1 where they last longer", c => c.LifeRatio)
            .Flag("distinguishable", "whether the failure probabilities can be told apart", c => c.IsRiskDistinct)
            .Flag("b10_distinguishable", "whether the B10 lives can be told apart", c => c.IsLifeDistinct), c => c.Change).OrNull();

    public static JsonForm<(IReadOnlyList<ScenarioDocument> Documents, ComparisonResult Result)> Form { get; } =
        new JsonForm<(IReadOnlyList<ScenarioDocument> Documents, ComparisonResult Result)>()
            .With(Common, c => c.Result)
            .List("cases", "the scenarios in the order given", new JsonForm<(ScenarioDocument Document, ComparedCase Case)>()
                .With(CommonForms.Scenario(), c => c.Document)
                .With(Case, c => c.Case), c => c.Documents.Zip(c.Result.Cases));

    /// <summary>The columns of one case.</summary>
    public static string[] CaseHeader { get; } =
    [
        "failure_probability", "failure_probability_low", "failure_probability_high", "b10_km", "b10_km_low", "b10_km_high",
        "difference", "difference_low", "difference_high", "ratio", "ratio_low", "ratio_high", "b10_ratio", "b10_ratio_low",
        "b10_ratio_high",
        "distinguishable", "b10_distinguishable",
    ];

    public static string[] Header { get; } = ["file", .. CaseHeader];

    public static IEnumerable<string[]> Rows(IReadOnlyList<ScenarioDocument> documents, ComparisonResult result) =>
        result.Cases.Select((c, i) => (string[])[documents[i].FileName, .. CellsOf(c)]);

    /// <summary>The cells of one case.</summary>
    public static IEnumerable<string> CellsOf(ComparedCase c)
    {
        Interval?[] intervals = [c.Probability, c.B10Km, c.Change?.Difference, c.Change?.Ratio, c.Change?.LifeRatio];
        return intervals.SelectMany(i => i is { } x ? new[] { Cells.Of(x.Estimate), Cells.Of(x.Low), Cells.Of(x.High) } : ["", "", ""])
            .Concat([Word(c.Change?.IsRiskDistinct), Word(c.Change?.IsLifeDistinct)]);
    }

    private static string Word(bool? yes) => yes is bool y ? (y ? "yes" : "no") : "";
}
