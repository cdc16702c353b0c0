using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Distributions;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads what a remedy changes: another value, a multiple of the value, another weld category or environment.</summary>
internal sealed class ChangeReader(ErrorLog errors, ValueReader values, InputCollector inputs)
{
    private const string Times = "times";

    private readonly Dictionary<string, Input> byName = inputs.InOrder().ToDictionary(i => i.Name);

    /// <summary>Reads a table of changes; null, with the errors logged, where one is wrong.</summary>
    public ImmutableArray<Change>? Read(TomlTable table, Scenario scenario)
    {
        List<Change> read = [];
        bool sound = true;
        foreach ((string name, TomlEntry entry) in Flatten("", table, scenario))
        {
            if (read.Exists(c => c.Input == name))
            {
                errors.Add(entry.KeyAt, $"{name} is changed twice");
                sound = false;
            }
            else if (ReadChange(name, entry, scenario) is Change change)
            {
                read.Add(change);
            }
            else
            {
                sound = false;
            }
        }

        return sound ? [.. read] : null;
    }

    /// <summary>
    /// The changes by the inputs' full names, which may be quoted or dotted: <c>"axle.wall_mm" = 8</c>, <c>axle.wall_mm = 8</c>.
    /// </summary>
    private IEnumerable<(string Name, TomlEntry Entry)> Flatten(string before, TomlTable table, Scenario scenario) =>
        table.Entries.SelectMany(entry =>
        {
            string name = before + entry.Key;
            bool isPath = byName.Keys.Concat(scenario.WordNames).Any(n => n.StartsWith(name + ".", StringComparison.Ordinal));
            return isPath && entry.Node is TomlTable inner ? Flatten(name + ".", inner, scenario) : [(name, entry)];
        });

    private Change? ReadChange(string name, TomlEntry entry, Scenario scenario)
    {
        Detail? detail = scenario.DetailOf(name);
        if (detail is { IsOwn: true })
        {
            errors.Add(entry.KeyAt, $"{name} cannot be changed: the S-N curve is the scenario's own");
            return null;
        }

        if (detail is not null)
        {
            return new DetailReader(errors).Read(name, entry.Node, detail.Catalogue is { Length: > 0 } known ? known : null) is { } choice
                ? new Change.ToWord(name, choice) : null;
        }

        if (!byName.TryGetValue(name, out Input? input))
        {
            if (!inputs.IsWrong(name))
            {
                errors.Add(entry.KeyAt, $"there is no input {MessageText.Quote(name)}{Hint(name, scenario)}");
            }

            return null;
        }

        if (entry.Node is TomlTable table && table.Find(Times) is not null && table.Find("distribution") is null)
        {
            return ReadTimes(new TableReader(table, name, RemedyFormat.Times, errors), input);
        }

        return values.Read(entry.Node, name, input.Quantity.Domain) is Value value ? new Change.ToValue(name, value) : null;
    }

    private Change.Times? ReadTimes(TableReader table, Input input)
    {
        double? factor = table.Number(Times);
        if (!table.RejectUnknown() || factor is not double f)
        {
            return null;
        }

        Domain domain = input.Quantity.Domain;
        Position at = table.Table.Find(Times)!.Node.At;
        try
        {
            Value scaled = Change.Times.Scale(input.Value, f);
            string? problem = scaled is Value.Uncertain { Distribution: var d } && d.IsContinuous
                ? DomainGuard.Problem(d, domain, input.Name) : null;
            bool isOutside = scaled is Value.Uncertain { Distribution: { IsContinuous: false } list }
                ? !(domain.Contains(list.Minimum) && domain.Contains(list.Maximum))
                : !domain.Contains(scaled.Nominal);
            if (problem is null && !isOutside)
            {
                return new Change.Times(input.Name, f);
            }

            errors.Add(at, problem ?? $"{input.Name} must be {domain.Describe()}, also times {f:G6}");
        }
        catch (DistributionException e)
        {
            errors.Add(at, $"{input.Name}: {e.Message}");
        }

        return null;
    }

    private string Hint(string name, Scenario scenario) =>
        Trip.IsNameOf(name) && !byName.Keys.Any(Trip.IsNameOf) ? "; what changes a trip stands under [[trip.remedies]]" :
        NearestName.Find(name, [.. byName.Keys, .. scenario.WordNames]) is string near ? $"; did you mean \"{near}\"?" : "";
}
