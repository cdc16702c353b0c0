using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the rank correlations between uncertain inputs.</summary>
internal sealed class CorrelationsReader(ErrorLog errors, InputCollector inputs)
{
    private readonly Dictionary<string, Input> byName = inputs.InOrder().ToDictionary(i => i.Name);

    /// <summary>Reads the correlations at the top of the file; what is wrong is logged.</summary>
    public ImmutableArray<RankCorrelation> Read(TableReader root)
    {
        if (root.Inners("correlations") is not { Count: > 0 } tables)
        {
            return [];
        }

        List<RankCorrelation> read = [];
        HashSet<(string, string)> pairs = [];
        foreach (TomlTable table in tables)
        {
            if (ReadOne(new TableReader(table, "correlations", ScenarioFormat.Correlation, errors), pairs) is RankCorrelation correlation)
            {
                read.Add(correlation);
            }
        }

        if (read.Count == tables.Count)
        {
            RejectImpossible(read, root.Find("correlations")!.KeyAt);
        }

        return [.. read];
    }

    private RankCorrelation? ReadOne(TableReader table, HashSet<(string First, string Second)> pairs)
    {
        TomlEntry? between = table.Require("between");
        double? spearman = table.Number("spearman");
        table.RejectUnknown();
        if (between is null)
        {
            return null;
        }

        if (between.Node is not TomlArray { Items: [TomlText first, TomlText second] })
        {
            errors.Add(between.Node.At,
                "correlations.between must be the names of two inputs, such as [\"vehicle.sprung_kg\", \"vehicle.payload_kg\"]");
            return null;
        }

        // Both names are checked, also where the first is wrong.
        if (!IsUncertain(first) | !IsUncertain(second))
        {
            return null;
        }

        bool inOrder = string.CompareOrdinal(first.Text, second.Text) < 0;
        if (first.Text == second.Text)
        {
            errors.Add(second.At, $"{first.Text} cannot be correlated with itself");
        }
        else if (!pairs.Add(inOrder ? (first.Text, second.Text) : (second.Text, first.Text)))
        {
            errors.Add(between.Node.At, $"{first.Text} and {second.Text} are correlated already");
        }
        else if (spearman is double rho)
        {
            return new RankCorrelation(first.Text, second.Text, rho);
        }

        return null;
    }

    /// <summary>Not every set of pairs can hold at once: two inputs that both follow a third cannot oppose each other.</summary>
    private void RejectImpossible(List<RankCorrelation> correlations, Position at)
    {
        string[] names = [.. correlations.SelectMany(c => new[] { c.First, c.Second }).Distinct()];
        double[,] matrix = new double[names.Length, names.Length];
        for (int i = 0; i < names.Length; i++)
        {
            matrix[i, i] = 1;
        }

        foreach (RankCorrelation c in correlations)
        {
            (int i, int j) = (Array.IndexOf(names, c.First), Array.IndexOf(names, c.Second));
            matrix[i, j] = matrix[j, i] = c.Spearman;
        }

        try
        {
            _ = new GaussianCopula(names, matrix);
        }
        catch (DistributionException e)
        {
            errors.Add(at, e.Message);
        }
    }

    private bool IsUncertain(TomlText name)
    {
        string? problem = byName.GetValueOrDefault(name.Text)?.Value switch
        {
            null when inputs.IsWrong(name.Text) => null,
            null => $"there is no input {name.Shown}{Hint(name.Text)}",
            Value.Uncertain { Distribution.IsContinuous: true } => null,
            Value.Uncertain => $"{name.Text} is a list of values; only continuous distributions can be correlated",
            _ => $"{name.Text} is certain; only uncertain inputs can be correlated",
        };
        if (problem is not null)
        {
            errors.Add(name.At, problem);
        }

        return problem is null;
    }

    private string Hint(string name) => NearestName.Find(name, byName.Keys) is string near ? $"; did you mean \"{near}\"?" : "";
}
