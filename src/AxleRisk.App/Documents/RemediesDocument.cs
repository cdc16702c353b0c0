using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Documents;

/// <summary>Remedies as JSON and as rows.</summary>
internal static class RemediesDocument
{
    public static JsonForm<RemediesResult> Form { get; } = new JsonForm<RemediesResult>()
        .With(CompareDocument.Common, r => r.Comparison)
        .Text("currency", "the currency of the costs; only where the scenario states one", r => r.Currency).Optional()
        .Object("base", "the scenario as it is", CompareDocument.Case, r => r.Base)
        .Text("best_single", "the remedy with the least failure probability; null without remedies", r => r.Best(1)?.Name).OrNull()
        .Text("best_pair", "the pair with the least failure probability; null without pairs", r => r.Best(2)?.Name).OrNull()
        .List("remedies", "the remedies and their pairs, the least failure probability first", new JsonForm<RemedyRow>()
            .Texts("names", "one remedy, or two", r => r.Remedies.Select(x => x.Name))
            .NumberOrNull("cost", "what they cost together; null where one does not say", r => r.Cost)
            .List("changes", "what they change", new JsonForm<Change>()
                .Text("input", "the input", c => c.Input)
                .Text("change", "what it becomes, in words", c => c.Description), r => r.Remedies.SelectMany(x => x.Changes))
            .With(CompareDocument.Case, r => r.Case), r => r.Rows);

    public static string[] Header { get; } = ["remedies", "cost", .. CompareDocument.CaseHeader];

    public static IEnumerable<string[]> Rows(RemediesResult result) =>
    [
        ["", "", .. CompareDocument.CellsOf(result.Base)],
        .. result.Rows.Select(r => (string[])[r.Name, r.Cost is double cost ? Cells.Of(cost) : "", .. CompareDocument.CellsOf(r.Case)]),
    ];
}
