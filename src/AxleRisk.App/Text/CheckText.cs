using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>A checked scenario as text: its certain values and its factors.</summary>
internal static class CheckText
{
    public const string NothingUncertain = "No value of this scenario is uncertain.";

    public static TextTable FactorTable(FactorSet factors)
    {
        var table = new TextTable("factor", "<unit", "<", "5 %", "50 %", "95 %");
        foreach (Factor f in factors.Factors)
        {
            string Point(double p) => f.Distribution is { } d ? f.Show(d.Quantile(p)) : Figures.None;
            string assumed = f is ScalarFactor { Input.IsDefault: true } ? "assumed " : "";
            table.AddNoted(
                f.Name, f.Label, f.Unit, assumed + f.Knowledge.ToString().ToLowerInvariant(), Point(0.05), Point(0.5), Point(0.95));
        }

        return table;
    }

    public static TextTable CertainTable(Scenario scenario)
    {
        var table = new TextTable("value", "number", "<unit", "<");
        foreach (CertainValue v in Certain(scenario))
        {
            table.AddNoted(v.Key, v.Label, v.Value, v.Unit, v.Remark);
        }

        return table;
    }

    /// <summary>Each factor with its key and its distribution.</summary>
    public static IEnumerable<string> FactorLines(FactorSet factors) =>
        factors.Factors.Select(f => $"{f.Label} ({f.Name}): {DistributionText.Of(f)}");

    /// <summary>Each certain value with its key.</summary>
    public static IEnumerable<string> CertainLines(Scenario scenario) => Certain(scenario).Select(v =>
        $"{v.Label} ({v.Key}): {v.Value}{(v.Unit.Length == 0 ? "" : " " + v.Unit)}{(v.Remark.Length == 0 ? "" : "; " + v.Remark)}");

    public static IEnumerable<string> Correlations(Scenario scenario) => Correlations(scenario, scenario.Correlations);

    /// <summary>Rank correlations of a scenario or its trip.</summary>
    public static IEnumerable<string> Correlations(Scenario scenario, IEnumerable<RankCorrelation> correlations) => correlations.Select(c =>
        $"Rank correlation {c.Spearman:0.##} between {scenario.LabelOf(c.First)} and {scenario.LabelOf(c.Second)}");

    private static IEnumerable<CertainValue> Certain(Scenario scenario) =>
    [
        .. scenario.Inputs.Where(i => i.Value is Value.Certain).Select(i => new CertainValue(
            i.Label, i.Name, Figures.Exact(i.Value.Nominal), i.Quantity.Unit,
            i.IsDefault ? $"default: {i.DefaultSource}" : "")),
        .. scenario.Detail is { Own: { } own }
            ? [new CertainValue("S-N curve of your own", "detail.curve", CurveText.Of(own), "", scenario.Detail.IsOwn ? own.Source
                : $"not in force: the catalogue is {scenario.Detail.Catalogue}")]
            : Array.Empty<CertainValue>(),
        .. scenario.Detail is { IsOwn: false, Categories: [var only] }
            ? [new CertainValue(WordFactor.LabelOfName(Change.CategoryName)!, Change.CategoryName, only, "", scenario.Detail.Catalogue)]
            : Array.Empty<CertainValue>(),
        .. scenario.Detail.Environment is { Only: { } environment } && environment != Surroundings.Air
            ? [new CertainValue(WordFactor.LabelOfName(Change.EnvironmentName)!, Change.EnvironmentName, environment, "", "")]
            : Array.Empty<CertainValue>(),
        .. scenario.Bearing is { } kind
            ? [new CertainValue("kind of bearing", "bearing.kind", kind.ToString(), "", "")] : Array.Empty<CertainValue>(),
        new CertainValue("counting of cycles", "fatigue.counting", scenario.Counting.ToString(), "", ""),
    ];

    private readonly record struct CertainValue(string Label, string Key, string Value, string Unit, string Remark);
}
