using System.Collections.Immutable;
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
        .. Certain(scenario.Detail, "", "detail.curve", Change.WordNames),
        .. scenario.Sections.SelectMany(s => Certain(s.Detail, $" of {Printable.Line(s.Name)}", s.NameOf("curve"), s.WordNames)),
        .. scenario.Bearing is { } kind
            ? [new CertainValue("kind of bearing", "bearing.kind", kind.ToString(), "", "")] : Array.Empty<CertainValue>(),
        new CertainValue("counting of cycles", "fatigue.counting", scenario.Counting.ToString(), "", ""),
    ];

    private static IEnumerable<CertainValue> Certain(Detail detail, string of, string curve, ImmutableArray<string> words)
    {
        if (detail.Own is { } own)
        {
            yield return new($"S-N curve of your own{of}", curve, CurveText.Of(own), "", detail.IsOwn ? own.Source
                : $"not in force: the catalogue is {detail.Catalogue}");
        }

        if (detail is { IsOwn: false, Categories: [var only] })
        {
            yield return new(WordFactor.LabelOfName(words[0])!, words[0], only, "", detail.Catalogue);
        }

        if (detail.Environment is { Only: { } environment } && environment != Surroundings.Air)
        {
            yield return new(WordFactor.LabelOfName(words[1])!, words[1], environment, "", "");
        }
    }

    private readonly record struct CertainValue(string Label, string Key, string Value, string Unit, string Remark);
}
