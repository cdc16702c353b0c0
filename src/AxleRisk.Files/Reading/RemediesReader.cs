using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the remedies: named changes of the scenario's inputs.</summary>
/// <param name="errors">Where errors go.</param>
/// <param name="values">Reads the scalars.</param>
/// <param name="inputs">What can be changed.</param>
internal sealed class RemediesReader(ErrorLog errors, ValueReader values, InputCollector inputs)
{
    private const string Key = "remedies";

    private readonly ChangeReader changes = new(errors, values, inputs);

    /// <summary>Reads the remedies in a table; what is wrong is logged.</summary>
    /// <param name="table">The table that they stand in: the top of the file or the trip.</param>
    /// <param name="scenario">The scenario without them.</param>
    /// <param name="taken">The names of other remedies, which these must not have.</param>
    public ImmutableArray<Remedy> Read(TableReader table, Scenario scenario, params IEnumerable<string> taken)
    {
        string path = table.NameOf(Key);
        HashSet<string> names = [.. taken];
        List<(Position At, Remedy? Remedy)> read = [];
        foreach (TomlTable one in table.Inners(Key) ?? [])
        {
            read.Add((one.At, ReadOne(new TableReader(one, path, RemedyFormat.Remedy, errors), names, scenario)));
        }

        if (read.TrueForAll(r => r.Remedy is not null))
        {
            RejectSolid(read, scenario);
        }

        return [.. read.Select(r => r.Remedy).OfType<Remedy>()];
    }

    private Remedy? ReadOne(TableReader table, HashSet<string> names, Scenario scenario)
    {
        string? name = ReadName(table, names);
        double? cost = table.Number("cost");
        TomlEntry? change = table.Require("change");
        table.RejectUnknown();
        if (change is null)
        {
            return null;
        }

        if (change.Node is not TomlTable node || !node.Entries.Any())
        {
            errors.Add(change.Node.At, $"{table.NameOf("change")} must be a table of inputs and their values, such as {{ \"axle.wall_mm\" = 8 }}");
            return null;
        }

        return changes.Read(node, scenario) is ImmutableArray<Change> read && name is not null ? new Remedy(name, cost, read) : null;
    }

    private string? ReadName(TableReader table, HashSet<string> names)
    {
        if (table.Line("name") is not string name)
        {
            return null;
        }

        Position at = table.Table.Find("name")!.Node.At;
        if (!names.Add(name))
        {
            errors.Add(at, $"there are two remedies with the name {MessageText.Quote(name)}");
        }
        else
        {
            return name;
        }

        return null;
    }

    // As in the file itself: a wall of more than half of the outside is no wall, with one remedy or with two.
    private void RejectSolid(List<(Position At, Remedy? Remedy)> read, Scenario scenario)
    {
        for (int i = 0; i < read.Count; i++)
        {
            for (int j = i; j < read.Count; j++)
            {
                string who = i == j ? "" : $" together with {MessageText.Quote(read[i].Remedy!.Name)}";
                if (Apply(scenario, read[i].Remedy!, i == j ? null : read[j].Remedy!, out string fault) is not Scenario changed)
                {
                    errors.Add(read[j].At, $"{MessageText.Quote(read[j].Remedy!.Name)}{who}: {fault}");
                    continue;
                }

                if (AxleReader.Solid(changed) is var (wall, size) && AxleReader.Solid(scenario) is null
                    && !(i != j && IsSolidAlone(i, j)))
                {
                    errors.Add(read[j].At,
                        $"{MessageText.Quote(read[j].Remedy!.Name)}{who}: {wall.Name} ({wall.Value.Nominal:G6}) must not be above half of {size.Quantity.Key} ({size.Value.Nominal:G6})");
                }
            }
        }

        static Scenario? Apply(Scenario scenario, Remedy one, Remedy? other, out string fault)
        {
            try
            {
                fault = "";
                Scenario changed = Remedy.Apply(scenario, one);
                return other is null ? changed : Remedy.Apply(changed, other);
            }
            catch (DistributionException e)
            {
                // Each alone was read without fault; two factors on one value may go beyond all numbers.
                fault = e.Message;
                return null;
            }
        }

        bool IsSolidAlone(int i, int j) =>
            AxleReader.Solid(Remedy.Apply(scenario, read[i].Remedy!)) is not null
                || AxleReader.Solid(Remedy.Apply(scenario, read[j].Remedy!)) is not null;
    }
}
