using System.Text.Json.Nodes;
using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;

namespace AxleRisk.App.Documents;

/// <summary>A checked scenario as JSON and as rows.</summary>
internal static class CheckDocument
{
    /// <summary>The whole document of the command.</summary>
    public static JsonObject Of(ScenarioDocument document, FactorSet factors) =>
        WholeDocument.Write("check", document, Form, (document.Scenario, factors));

    public static JsonForm<(Scenario Scenario, FactorSet Factors)> Form { get; } = new JsonForm<(Scenario Scenario, FactorSet Factors)>()
        .Number("required_km", "the required distance, km", c => c.Scenario.RequiredKm)
        .List("factors", "what is uncertain", new JsonForm<Factor>()
            .Text("name", "the factor", f => f.Name)
            .Text("label", "its name in plain words", f => f.Label)
            .Text("unit", "its unit; empty for a pure number", f => f.Unit)
            .Word("knowledge", "whether it differs between vehicles or is not known",
                CommonForms.KnowledgeWords, f => CommonForms.Word(f.Knowledge))
            .Text("distribution", "its distribution", f => f.Description)
            .Flag("assumed", "whether it is a default", IsAssumed)
            .NumberOrNull("p5", "its 5 % point, in its unit; null where it has none", f => Point(f, 0.05))
            .NumberOrNull("p50", "its median", f => Point(f, 0.5))
            .NumberOrNull("p95", "its 95 % point", f => Point(f, 0.95)), c => c.Factors.Factors)
        .List("certain", "what is certain", new JsonForm<Input>()
            .Text("name", "the input", i => i.Name)
            .Text("label", "its name in plain words", i => i.Label)
            .Text("unit", "its unit; empty for a pure number", i => i.Quantity.Unit)
            .Number("value", "its value, in its unit", i => i.Value.Nominal)
            .Flag("default", "whether it is a default", i => i.IsDefault), c => c.Scenario.Inputs.Where(i => i.Value is Value.Certain))
        .Word("bearing_kind", "kind of the wheel bearing; only where its life is a mode of failure", ["ball", "roller"],
            c => c.Scenario.Bearing?.ToString().ToLowerInvariant()).Optional();

    public static string[] Header { get; } = ["factor", "unit", "knowledge", "distribution", "p5", "p50", "p95"];

    public static IEnumerable<string[]> Rows(FactorSet factors) => factors.Factors.Select(f => (string[])
    [
        f.Name, f.Unit, f.Knowledge.ToString().ToLowerInvariant(), f.Description,
        Cells.Of(Point(f, 0.05)), Cells.Of(Point(f, 0.5)), Cells.Of(Point(f, 0.95)),
    ]);

    private static bool IsAssumed(Factor f) => f is ScalarFactor { Input.IsDefault: true };

    private static double Point(Factor f, double p) => f.Distribution?.Quantile(p) ?? double.NaN;
}
