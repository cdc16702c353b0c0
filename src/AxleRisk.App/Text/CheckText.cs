using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>A checked scenario as text: its certain values and its factors.</summary>
internal static class CheckText
{
    public static IEnumerable<string> Lines(Scenario scenario, FactorSet factors)
    {
        yield return $"Valid: {scenario.Legs.Length} legs, {factors.Factors.Length} factors, required distance {Figures.Km(scenario.RequiredKm)} km.";
        yield return "";
        yield return Style.Heading("Factors");
        foreach (string line in FactorLines(factors))
        {
            yield return line;
        }

        yield return "";
        yield return Style.Heading("Certain values");
        foreach (string line in CertainLines(scenario))
        {
            yield return line;
        }

        yield return "";
        foreach (RankCorrelation c in scenario.Correlations)
        {
            foreach (string line in Wrap.Lines($"Rank correlation {c.Spearman:0.##} between {c.First} and {c.Second}", Layout.Width))
            {
                yield return line;
            }
        }
    }

    private static IEnumerable<string> FactorLines(FactorSet factors)
    {
        var table = new TextTable("factor", "<unit", "<", "5 %", "50 %", "95 %");
        foreach (Factor f in factors.Factors)
        {
            string Point(double p) => f.Distribution is { } d ? f.Show(d.Quantile(p)) : Figures.None;
            string assumed = f is ScalarFactor { Input.IsDefault: true } ? "assumed " : "";
            table.Add(f.Name, f.Unit, assumed + f.Knowledge.ToString().ToLowerInvariant(), Point(0.05), Point(0.5), Point(0.95));
        }

        foreach (string line in table.Lines(Layout.Width))
        {
            yield return line;
        }

        yield return "";
        foreach (Factor f in factors.Factors)
        {
            foreach (string line in Wrap.Lines($"{f.Name}: {f.Description}", Layout.Width - 2, "    "))
            {
                yield return "  " + line;
            }
        }
    }

    private static IEnumerable<string> CertainLines(Scenario scenario)
    {
        var table = new TextTable("value", "number", "<unit", "<");
        foreach (Input input in scenario.Inputs.Where(i => i.Value is Value.Certain))
        {
            table.Add(input.Name, Figures.Number(input.Value.Nominal), input.Quantity.Unit, input.IsDefault ? $"default: {input.Quantity.DefaultSource}" : "");
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
        return table.Lines(Layout.Width);
    }
}
