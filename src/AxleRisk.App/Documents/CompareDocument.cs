using System.Text.Json.Nodes;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Numerics;
using AxleRisk.Files;

namespace AxleRisk.App.Documents;

/// <summary>A comparison of scenarios as JSON and as rows.</summary>
internal static class CompareDocument
{
    /// <summary>The columns of one case.</summary>
    public static string[] CaseHeader { get; } =
    [
        "failure_probability", "failure_probability_low", "failure_probability_high", "b10_km", "b10_km_low", "b10_km_high",
        "difference", "difference_low", "difference_high", "ratio", "ratio_low", "ratio_high", "b10_ratio", "b10_ratio_low",
        "b10_ratio_high",
        "distinguishable", "b10_distinguishable",
    ];

    public static string[] Header { get; } = ["file", .. CaseHeader];

    public static JsonObject Of(IReadOnlyList<ScenarioDocument> documents, ComparisonResult result)
    {
        JsonObject document = Json.Head("compare", documents[0]);
        AddTo(document, result);
        document["cases"] = Json.List(result.Cases.Select((c, i) => (Case: c, Document: documents[i])), x =>
        {
            JsonObject one = Of(x.Case);
            one.Insert(0, "title", x.Document.Scenario.Title);
            one.Insert(1, "file", x.Document.FileName);
            one.Insert(2, "digest", x.Document.Digest);
            return one;
        });
        return document;
    }

    /// <summary>Adds what all comparisons state.</summary>
    public static void AddTo(JsonObject document, ComparisonResult result)
    {
        document["distance_km"] = result.DistanceKm;
        document["method"] = result.IsConditional ? "conditional" : "crude";
    }

    /// <summary>One case; its change is null for the first.</summary>
    public static JsonObject Of(ComparedCase c) => new()
    {
        ["failure_probability"] = Json.Resolved(c.Probability),
        ["b10_km"] = Json.Of(c.B10Km),
        ["change"] = c.Change is not { } change ? null : new JsonObject
        {
            ["difference"] = Json.Of(change.Difference),
            ["ratio"] = Json.Of(change.Ratio),
            ["b10_ratio"] = Json.Of(change.LifeRatio),
            ["distinguishable"] = change.IsRiskDistinct,
            ["b10_distinguishable"] = change.IsLifeDistinct,
        },
    };

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
