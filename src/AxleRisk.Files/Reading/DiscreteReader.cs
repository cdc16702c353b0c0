using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Distributions;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the distributions that are lists of values: a choice with weights and a measured sample.</summary>
internal sealed class DiscreteReader(ErrorLog errors)
{
    private const double WeightTolerance = 1e-6;

    /// <summary>Reads a choice of numbers.</summary>
    public Distribution? ReadChoice(TableReader table, string name, Domain domain)
    {
        RejectTruncation(table, name, "choice");
        double[]? values = ReadNumbers(table, "values", domain);
        double[]? weights = ReadWeights(table, values?.Length);
        if (!table.RejectUnknown() || values is null || weights is null)
        {
            return null;
        }

        return DistributionMaker.Make(() => new NumberChoice(values, weights), table, name, errors);
    }

    /// <summary>Reads a sample from a data file.</summary>
    public Distribution? ReadSample(TableReader table, string name, Domain domain, DataFiles data)
    {
        RejectTruncation(table, name, "sample");
        string? file = table.Text("file");
        string? column = table.Text("column");
        if (!table.RejectUnknown() || file is null || column is null)
        {
            return null;
        }

        Position at = table.Table.Find("file")!.Node.At;
        if (data.Read(file, out string reason) is not byte[] bytes)
        {
            errors.Add(at, $"{name}: cannot read {MessageText.Quote(file)}: {reason}");
            return null;
        }

        double[]? values = new SampleColumn(file, at, errors).Read(bytes, column, domain);
        return values is null ? null : DistributionMaker.Make(() => new Empirical(values), table, name, errors);
    }

    /// <summary>The weights of <paramref name="count"/> states, scaled to a sum of exactly 1; null where they are wrong.</summary>
    public double[]? ReadWeights(TableReader table, int? count)
    {
        double[]? weights = ReadNumbers(table, "weights", Domain.Fraction);
        if (weights is null || count is null)
        {
            return null;
        }

        Position at = table.Table.Find("weights")!.Node.At;
        double sum = weights.Sum();
        if (weights.Length != count)
        {
            errors.Add(at, $"{table.NameOf("weights")} must be as many as the values: {count}, not {weights.Length}");
        }
        else if (!(Math.Abs(sum - 1) <= WeightTolerance))
        {
            errors.Add(at, $"{table.NameOf("weights")} must add up to 1, not {sum:G6}");
        }
        else
        {
            return [.. weights.Select(w => w / sum)];
        }

        return null;
    }

    /// <summary>An array that must be there and not be empty.</summary>
    public TomlArray? ReadArray(TableReader table, string key)
    {
        if (table.Require(key) is not TomlEntry entry)
        {
            return null;
        }

        if (entry.Node is TomlArray { Items.Count: > 0 } array)
        {
            return array;
        }

        errors.Add(entry.Node.At, $"{table.NameOf(key)} must be an array with at least one item");
        return null;
    }

    private double[]? ReadNumbers(TableReader table, string key, Domain domain)
    {
        if (ReadArray(table, key) is not TomlArray array)
        {
            return null;
        }

        List<double> numbers = [];
        foreach (TomlNode item in array.Items)
        {
            if (item is TomlNumber { Number: double number } && domain.Contains(number))
            {
                numbers.Add(number);
            }
            else
            {
                errors.Add(item.At, $"{table.NameOf(key)} must each be {domain.Describe()}, not {item.Shown}");
            }
        }

        return numbers.Count == array.Items.Count ? [.. numbers] : null;
    }

    private static void RejectTruncation(TableReader table, string name, string family)
    {
        foreach (string key in new[] { "min", "max" })
        {
            table.Refuse(key, $"{name}: {key} truncates continuous distributions only, not a {family}");
        }
    }
}
