using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads what was found on one vehicle, and the explanations proposed.</summary>
/// <param name="errors">Where errors go.</param>
/// <param name="names">What it may speak of.</param>
/// <param name="changes">Reads what would have been otherwise.</param>
internal sealed class EvidenceReader(ErrorLog errors, EvidenceNames names, ChangeReader changes)
{
    /// <summary>Reads the tables at the top of the file, with the scenario without them; what is wrong is logged.</summary>
    public Evidence Read(TableReader root, Scenario scenario)
    {
        ImmutableArray<Explanation> explanations = new ExplanationsReader(errors, names, changes).Read(root, scenario);
        Evidence evidence = root.Inner("evidence") is TableReader table ? ReadTable(table, scenario) : Evidence.None;
        return evidence with { Explanations = explanations };
    }

    private Evidence ReadTable(TableReader table, Scenario scenario)
    {
        LifeEvidence? life = ReadLife(table);
        var read = new Evidence
        {
            Life = life,
            CrackedAt = ReadCracked(table, life, scenario),
            WouldHavePassedKm = table.Number("would_have_passed_km"),
            Source = ReadSource(table),
            Measured = ReadAll(table, "measured", EvidenceFormat.Measured, ReadMeasurement),
            Known = ReadAll(table, "known", EvidenceFormat.Known, ReadKnown),
            Looks = [.. ReadAll(table, "looks", EvidenceFormat.Look, t => new LookReader(errors).Read(t, scenario, life)).OrderBy(l => l.Km)],
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

        double? failedAt = table.Number("failed_at_km");
        double? survived = table.Number("survived_km");
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

    private string? ReadCracked(TableReader table, LifeEvidence? life, Scenario scenario)
    {
        if (table.Text("cracked_at") is not string name)
        {
            return null;
        }

        Position at = table.Find("cracked_at")!.Node.At;
        string[] known = [CheckedSection.First, .. scenario.Sections.Select(s => s.Name)];
        if (!known.Contains(name))
        {
            if (!names.IsWrong($"{CheckedSection.Table}.{name}"))
            {
                errors.Add(at,
                    $"evidence.cracked_at must be {MessageText.List([.. known.Select(MessageText.Quote)], "or")}, not {MessageText.Quote(name)}");
            }

            return null;
        }

        if (life?.FailedByKm is null)
        {
            errors.Add(table.Find("cracked_at")!.KeyAt, "evidence.cracked_at needs a failed_at_km or failed_between_km");
            return null;
        }

        return name;
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

    private ImmutableArray<T> ReadAll<T>(TableReader table, string key, TableFormat format, Func<TableReader, T?> read)
        where T : class =>
        [.. (table.Inners(key) ?? []).Select(t => read(new TableReader(t, format.Path, format, errors))).OfType<T>()];

    private Measurement? ReadMeasurement(TableReader table)
    {
        EvidenceNames.Target? target = ReadFactor(table);
        double? value = table.Number("value", target?.Quantity?.Domain ?? Domain.Any);
        double? deviation = table.Number("sd");
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
        else if (target.Quantity == Quantities.MinerSum || target.Quantity == Quantities.LifeScatter
            || target.Quantity == Quantities.SectionLifeScatter)
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
    private static string ReadSource(TableReader table) => table.Line("source") ?? "";

    private EvidenceNames.Target? ReadFactor(TableReader table) =>
        table.Text("factor") is string name ? names.Find(name, table.Find("factor")!.Node.At) : null;

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
