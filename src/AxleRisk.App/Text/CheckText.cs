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
            table.Add(f.Name, f.Unit, assumed + f.Knowledge.ToString().ToLowerInvariant(), Point(0.05), Point(0.5), Point(0.95));
        }

        return table;
    }

    public static TextTable CertainTable(Scenario scenario)
    {
        var table = new TextTable("value", "number", "<unit", "<");
        foreach (Input input in scenario.Inputs.Where(i => i.Value is Value.Certain))
        {
            table.Add(input.Name, Figures.Exact(input.Value.Nominal), input.Quantity.Unit,
                input.IsDefault ? $"default: {input.Quantity.DefaultSource}" : "");
        }

        if (scenario.Detail.Categories.Length == 1)
        {
            table.Add("detail.category", scenario.Detail.Categories[0], "", scenario.Detail.Catalogue);
        }

        if (scenario.Bearing is { } kind)
        {
            table.Add("bearing.kind", kind.ToString());
        }

        table.Add("fatigue.counting", scenario.Counting.ToString());
        return table;
    }

    public static IEnumerable<string> Correlations(Scenario scenario) =>
        scenario.Correlations.Select(c => $"Rank correlation {c.Spearman:0.##} between {c.First} and {c.Second}");
}
