using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads what was found on one vehicle, and the explanations proposed.</summary>
internal sealed class EvidenceReader(ErrorLog errors, EvidenceNames names)
{
    /// <summary>The most measurements, and the most known states, that a scenario may have.</summary>
    public const int Most = 64;

    private const string Source = "source";
    private const int LongestSource = 200;

    /// <summary>Reads the tables at the top of the file; what is wrong is logged.</summary>
    public Evidence Read(TableReader root)
    {
        ImmutableArray<Explanation> explanations = new ExplanationsReader(errors, names).Read(root.Find("explanations"));
        switch (root.Find("evidence")?.Node)
        {
            case null:
                return new Evidence { Explanations = explanations };
            case TomlTable table:
                return ReadTable(new TableReader(table, "evidence", errors)) with { Explanations = explanations };
            case TomlNode other:
                errors.Add(other.At, "evidence must be one table under [evidence]");
                return Evidence.None;
        }
    }

    private Evidence ReadTable(TableReader table)
    {
        LifeEvidence? life = ReadLife(table);
        var read = new Evidence
        {
            Life = life,
            Source = ReadSource(table),
            Measured = ReadAll(table, "measured", ReadMeasurement),
            Known = ReadAll(table, "known", ReadKnown),
        };
        table.RejectUnknown();
        RejectTwice(table, "measured");
        RejectTwice(table, "known");
        return read;
    }

    private LifeEvidence? ReadLife(TableReader table)
    {
        TomlEntry?[] stated = [table.Find("failed_at_km"), table.Find("failed_between_km"), table.Find("survived_km")];
        if (stated.OfType<TomlEntry>().Skip(1).FirstOrDefault() is TomlEntry second)
        {
            errors.Add(second.KeyAt, "only one of evidence.failed_at_km, failed_between_km and survived_km can be true");
        }

        double? failedAt = table.Number("failed_at_km", Domain.Positive);
        double? survived = table.Number("survived_km", Domain.Positive);
        if (failedAt is double at)
        {
            return new LifeEvidence.FailedAt(at);
        }

        if (survived is double km)
        {
            return new LifeEvidence.Survived(km);
        }

        return stated[1] is TomlEntry between ? ReadBetween(between) : null;
    }

    private LifeEvidence.FailedBetween? ReadBetween(TomlEntry entry)
    {
        if (entry.Node is TomlArray { Items: [TomlNumber { Number: double from }, TomlNumber { Number: double to }] }
            && Domain.NonNegative.Contains(from) && Domain.Positive.Contains(to) && from < to)
        {
            return new LifeEvidence.FailedBetween(from, to);
        }

        errors.Add(entry.Node.At, "evidence.failed_between_km must be two distances, the second above the first, such as [60000, 64000]");
        return null;
    }

    private ImmutableArray<T> ReadAll<T>(TableReader table, string key, Func<TableReader, T?> read)
        where T : class
    {
        string name = table.NameOf(key);
        if (table.Find(key) is not TomlEntry entry)
        {
            return [];
        }

        if (entry.Node is not TomlArray array || array.Items.Exists(i => i is not TomlTable))
        {
            errors.Add(entry.Node.At, $"{name} must be tables, each under [[{name}]]");
            return [];
        }

        if (array.Items.Count > Most)
        {
            errors.Add(array.Items[Most].At, $"there are {array.Items.Count} tables [[{name}]]; at most {Most} are possible");
            return [];
        }

        return [.. array.Items.Cast<TomlTable>().Select(t => read(new TableReader(t, name, errors))).OfType<T>()];
    }

    private Measurement? ReadMeasurement(TableReader table)
    {
        EvidenceNames.Target? target = ReadFactor(table);
        double? value = table.RequiredNumber("value", target?.Quantity?.Domain ?? Domain.Any);
        double? deviation = table.RequiredNumber("sd", Domain.Positive);
        string source = ReadSource(table);
        table.RejectUnknown();
        if (target is null)
        {
            return null;
        }

        Position at = table.Find("factor")!.Node.At;
        if (target.IsChoice)
        {
            errors.Add(at, $"{target.Name} is a choice; state it under [[evidence.known]]");
        }
        else if (target.Quantity is null)
        {
            errors.Add(at, $"{target.Name} cannot be measured here; an explanation may speak of it");
        }
        else if (target.Quantity == Quantities.MinerSum || target.Quantity == Quantities.LifeScatter)
        {
            errors.Add(at, $"{target.Name} shows only in the life; it cannot be measured");
        }
        else if (value is double v && deviation is double sd)
        {
            return new Measurement(target.Name, v, sd, source);
        }

        return null;
    }

    private KnownState? ReadKnown(TableReader table)
    {
        EvidenceNames.Target? target = ReadFactor(table);
        TomlEntry? state = table.Require("state");
        string source = ReadSource(table);
        table.RejectUnknown();
        if (target is null || state is null)
        {
            return null;
        }

        if (!target.IsChoice)
        {
            errors.Add(table.Find("factor")!.Node.At, $"{target.Name} is not a choice; state it under [[evidence.measured]]");
        }
        else if (target.StateOf(state.Node) is double value)
        {
            return new KnownState(target.Name, value, source);
        }
        else
        {
            errors.Add(state.Node.At, $"evidence.known.state must be {target.States} for {target.Name}, not {state.Node.Shown}");
        }

        return null;
    }

    /// <summary>Where a piece of evidence comes from; empty where it is not stated.</summary>
    private string ReadSource(TableReader table)
    {
        string text = table.Text(Source) ?? "";
        if (text.Length > 0 && MessageText.LineFault(text, LongestSource) is { } fault)
        {
            errors.Add(table.Find(Source)!.Node.At, $"{table.NameOf(Source)} must be one line of up to {LongestSource} characters; {fault}");
        }

        return text;
    }

    private EvidenceNames.Target? ReadFactor(TableReader table) =>
        table.RequiredText("factor") is string name ? names.Find(name, table.Find("factor")!.Node.At) : null;

    private void RejectTwice(TableReader table, string key)
    {
        HashSet<string> seen = [];
        foreach (TomlNode item in table.Find(key)?.Node is TomlArray array ? array.Items : [])
        {
            if (item is TomlTable one && one.Find("factor")?.Node is TomlText name && !seen.Add(name.Text))
            {
                errors.Add(name.At, $"{MessageText.OneLine(name.Text)} is {key} twice");
            }
        }
    }
}
