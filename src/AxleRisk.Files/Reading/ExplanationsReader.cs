using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the named explanations: sets of ranges and states, with their priors.</summary>
/// <param name="errors">Where errors go.</param>
/// <param name="names">What they may speak of.</param>
/// <param name="changes">Reads what would have been otherwise.</param>
internal sealed class ExplanationsReader(ErrorLog errors, EvidenceNames names, ChangeReader changes)
{
    /// <summary>Reads the explanations at the top of the file; what is wrong is logged.</summary>
    public ImmutableArray<Explanation> Read(TableReader root, Scenario scenario)
    {
        HashSet<string> seen = [];
        return [.. (root.Inners("explanations") ?? [])
            .Select(t => ReadOne(new TableReader(t, "explanations", EvidenceFormat.Explanation, errors), seen, scenario)).OfType<Explanation>()];
    }

    private Explanation? ReadOne(TableReader table, HashSet<string> seen, Scenario scenario)
    {
        string? name = ReadName(table, seen);
        double? prior = table.Number("prior");
        TomlEntry? when = table.Require("when");
        TomlEntry? instead = table.Find("instead");
        table.RejectUnknown();
        if (when is null)
        {
            return null;
        }

        if (when.Node is not TomlTable conditions || !conditions.Entries.Any())
        {
            errors.Add(when.Node.At, "explanations.when must be a table of conditions, such as { \"axle.wall_mm\" = { below = 5.4 } }");
            return null;
        }

        Condition?[] read = [.. conditions.Entries.Select(ReadCondition)];
        if (read.Contains(null))
        {
            return null;
        }

        ImmutableArray<Condition> all = [.. read.OfType<Condition>()];
        return ReadInstead(instead, all, scenario) is { } without && name is not null
            ? new Explanation(name, prior, all) { Instead = without } : null;
    }

    // What would have been without it: of inputs that it speaks of, and not what it says itself.
    private ImmutableArray<Change>? ReadInstead(TomlEntry? entry, ImmutableArray<Condition> when, Scenario scenario)
    {
        if (entry is null)
        {
            return [];
        }

        if (entry.Node is not TomlTable table || !table.Entries.Any())
        {
            errors.Add(entry.Node.At,
                "explanations.instead must be a table of inputs and what they would have been, such as { \"axle.wall_mm\" = 6 }");
            return null;
        }

        if (changes.Read(table, scenario) is not { } read)
        {
            return null;
        }

        string[] faults = [.. read.Select(c => FaultOf(c, when, scenario)).OfType<string>()];
        Array.ForEach(faults, fault => errors.Add(entry.Node.At, fault));
        return faults.Length == 0 ? read : null;
    }

    private static string? FaultOf(Change change, ImmutableArray<Condition> when, Scenario scenario)
    {
        if (when.FirstOrDefault(c => c.Column == change.Input) is not { } condition)
        {
            return $"explanations.instead speaks of {change.Input}, of which explanations.when says nothing; it may speak of "
                + MessageText.List([.. when.Select(c => c.Column)], "or");
        }

        ImmutableArray<string> known = scenario.FindWords(change.Input)?.Words ?? [];
        if (change is Change.ToWord { Choice.Words: var words } && words.FirstOrDefault(w => !known.Contains(w)) is { } other)
        {
            return $"explanations.instead: {other} is none of those that the scenario has for {change.Input} ({MessageText.List([.. known], "or")})";
        }

        double? value = change switch
        {
            Change.ToValue { Value: var to } => to.Nominal,
            Change.ToWord { Choice.Only: { } only } => known.IndexOf(only),
            _ => null,
        };
        return value is double v && condition.Holds(v)
            ? $"explanations.instead: with {change.Input} {change.Description} the explanation would hold all the same" : null;
    }

    private string? ReadName(TableReader table, HashSet<string> seen)
    {
        if (table.Line("name") is not string name)
        {
            return null;
        }

        Position at = table.Find("name")!.Node.At;
        if (name == "nothing unusual")
        {
            errors.Add(at, "\"nothing unusual\" is always among the explanations; it means none of those named");
        }
        else if (!seen.Add(name))
        {
            errors.Add(at, $"there are two explanations with the name {MessageText.Quote(name)}");
        }
        else
        {
            return name;
        }

        return null;
    }

    private Condition? ReadCondition(TomlEntry entry)
    {
        if (names.Find(entry.Key, entry.KeyAt) is not EvidenceNames.Target target)
        {
            return null;
        }

        if (entry.Node is TomlTable range && target.Words.IsEmpty)
        {
            return ReadRange(new TableReader(range, target.Name, EvidenceFormat.Range, errors), target.Name);
        }

        if (!target.IsChoice)
        {
            errors.Add(entry.Node.At,
                $"{target.Name} needs a range, such as {{ below = 5.4 }} or {{ above = 5, below = 6 }}, not {entry.Node.Shown}");
            return null;
        }

        TomlNode[] stated = entry.Node is TomlArray array ? [.. array.Items] : [entry.Node];
        double?[] states = [.. stated.Select(target.StateOf)];
        if (states.Length > 0 && Array.TrueForAll(states, s => s is not null))
        {
            return new Condition(target.Name, double.NegativeInfinity, double.PositiveInfinity, [.. states.Select(s => s!.Value)]);
        }

        errors.Add(entry.Node.At, $"{target.Name} must be {target.States}, or several of these in brackets, not {entry.Node.Shown}");
        return null;
    }

    private Condition? ReadRange(TableReader range, string name)
    {
        double? above = range.Number("above");
        double? below = range.Number("below");
        bool known = range.RejectUnknown();
        if (above is null && below is null)
        {
            if (known && !range.Table.Entries.Any())
            {
                errors.Add(range.Table.At, $"{name} needs above, below or both");
            }

            return null;
        }

        if (above >= below)
        {
            errors.Add(range.Table.At, $"{name}: above must be less than below, or nothing lies between");
            return null;
        }

        return new Condition(name, above ?? double.NegativeInfinity, below ?? double.PositiveInfinity, []);
    }
}
