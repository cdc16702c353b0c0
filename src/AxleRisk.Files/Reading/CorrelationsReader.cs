using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the rank correlations between uncertain inputs.</summary>
internal sealed class CorrelationsReader(ErrorLog errors, InputCollector inputs)
{
    /// <summary>The most correlations a scenario may have: finding the pair that makes them impossible takes time.</summary>
    public const int Most = 64;

    private readonly Dictionary<string, Input> byName = inputs.InOrder().ToDictionary(i => i.Name);

    /// <summary>Reads the array of correlations; what is wrong is logged.</summary>
    public ImmutableArray<RankCorrelation> Read(TomlEntry? entry)
    {
        if (entry is null)
        {
            return [];
        }

        if (entry.Node is not TomlArray array || array.Items.Exists(i => i is not TomlTable))
        {
            errors.Add(entry.Node.At, "correlations must be tables, each under [[correlations]]");
            return [];
        }

        if (array.Items.Count > Most)
        {
            errors.Add(array.Items[Most].At, $"there are {array.Items.Count} correlations; at most {Most} are possible");
            return [];
        }

        List<RankCorrelation> read = [];
        HashSet<(string, string)> pairs = [];
        foreach (TomlTable table in array.Items.Cast<TomlTable>())
        {
            if (ReadOne(new TableReader(table, "correlations", errors), pairs) is RankCorrelation correlation)
            {
                read.Add(correlation);
            }
        }

        if (read.Count == array.Items.Count)
        {
            RejectImpossible(read, entry.KeyAt);
        }

        return [.. read];
    }

    private RankCorrelation? ReadOne(TableReader table, HashSet<(string First, string Second)> pairs)
    {
        TomlEntry? between = table.Require("between");
        double? spearman = ReadSpearman(table);
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

    private double? ReadSpearman(TableReader table)
    {
        if (table.Require("spearman") is not TomlEntry entry)
        {
            return null;
        }

        if (entry.Node is TomlNumber { Number: > -1 and < 1 and double rho })
        {
            return rho;
        }

        errors.Add(entry.Node.At, $"correlations.spearman must be a number above -1 and below 1, not {entry.Node.Shown}");
        return null;
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
