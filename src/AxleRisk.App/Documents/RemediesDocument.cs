using System.Text.Json.Nodes;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Documents;

/// <summary>Remedies as JSON and as rows.</summary>
internal static class RemediesDocument
{
    public static JsonObject AddTo(JsonObject document, RemediesResult result)
    {
        CompareDocument.AddTo(document, result.Comparison);
        if (result.Currency is { } currency)
        {
            document["currency"] = currency;
        }

        document["base"] = CompareDocument.Of(result.Base);
        document["best_single"] = result.Best(1)?.Name;
        document["best_pair"] = result.Best(2)?.Name;
        document["remedies"] = Json.List(result.Rows, r =>
        {
            JsonObject row = CompareDocument.Of(r.Case);
            row.Insert(0, "names", Json.List(r.Remedies, x => JsonValue.Create(x.Name)));
            row.Insert(1, "cost", r.Cost is double cost ? Json.Number(cost) : null);
            row.Insert(2, "changes", Json.List(r.Remedies.SelectMany(x => x.Changes), Of));
            return row;
        });
        return document;
    }

    public static string[] Header { get; } = ["remedies", "cost", .. CompareDocument.CaseHeader];

    public static IEnumerable<string[]> Rows(RemediesResult result) =>
    [
        ["", "", .. CompareDocument.CellsOf(result.Base)],
        .. result.Rows.Select(r => (string[])[r.Name, r.Cost is double cost ? Cells.Of(cost) : "", .. CompareDocument.CellsOf(r.Case)]),
    ];

    private static JsonObject Of(Change change) => new() { ["input"] = change.Input, ["change"] = change.Description };
}
