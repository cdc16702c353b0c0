using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the stretches of the vehicle's history.</summary>
/// <param name="errors">Where errors go.</param>
/// <param name="changes">Reads what a stretch changes.</param>
internal sealed class HistoryReader(ErrorLog errors, ChangeReader changes)
{
    private const string Key = "history", Until = "until_km";
    private const double ShareTolerance = 1e-6;

    /// <summary>Reads the stretches; what is wrong is logged.</summary>
    /// <param name="root">The top of the file.</param>
    /// <param name="scenario">The scenario without them.</param>
    public ImmutableArray<Stretch> Read(TableReader root, Scenario scenario)
    {
        TomlTable[] tables = [.. root.Inners(Key) ?? []];
        List<Stretch?> read = [];
        double fromKm = 0;
        for (int place = 0; place < tables.Length; place++)
        {
            var table = new TableReader(tables[place], Key, HistoryFormat.Stretch, errors);
            double? toKm = EndOf(table, place == tables.Length - 1, fromKm);
            read.Add(ReadOne(table, scenario, fromKm, toKm ?? fromKm));
            fromKm = toKm ?? fromKm;
        }

        return read.Contains(null) ? [] : [.. read.OfType<Stretch>()];
    }

    private double? EndOf(TableReader table, bool isLast, double fromKm)
    {
        double? until = table.Number(Until);
        if (table.Find(Until) is not { } entry)
        {
            if (!isLast)
            {
                errors.Add(table.Table.At, $"{Key}.{Until} is missing: only the last stretch is open");
            }

            return isLast ? double.PositiveInfinity : null;
        }

        if (isLast)
        {
            errors.Add(entry.KeyAt, $"the last stretch of the history has no {Until}: it is open, and says what follows; add a [[{Key}]] behind it");
        }
        else if (until <= fromKm)
        {
            errors.Add(entry.Node.At, $"{Key}.{Until} must be above {fromKm:R}, where the stretch begins, not {until:R}");
            return null;
        }

        return until;
    }

    private Stretch? ReadOne(TableReader table, Scenario scenario, double fromKm, double toKm)
    {
        int before = errors.Count;
        ImmutableArray<Change> changed = table.Find("change") is { } change ? ReadChanges(change, scenario) : [];
        ImmutableArray<Change> shares = ReadShares(table, scenario);
        bool renewed = ReadRenewed(table, scenario);
        table.RejectUnknown();
        if (errors.Count > before)
        {
            return null;
        }

        var stretch = new Stretch(fromKm, toKm, [.. changed, .. shares]) { RenewsDampers = renewed };
        if (AxleReader.Solid(scenario) is null
            && AxleReader.Solid(Remedy.Apply(scenario, new Remedy("", null, changed))) is var (wall, size))
        {
            errors.Add(table.Table.At, $"{wall.Name} must not be above half of {size.Quantity.Key} ({size.Value.Nominal:G6}) in this stretch");
            return null;
        }

        return stretch;
    }

    private ImmutableArray<Change> ReadChanges(TomlEntry entry, Scenario scenario)
    {
        if (entry.Node is not TomlTable table || !table.Entries.Any())
        {
            errors.Add(entry.Node.At, $"{Key}.change must be a table of inputs and their values, such as {{ \"vehicle.tyre_n_per_mm\" = 250 }}");
            return [];
        }

        ImmutableArray<Change> read = changes.Read(table, scenario) ?? [];
        foreach (Change change in read)
        {
            if (scenario.Inputs.FirstOrDefault(i => i.Name == change.Input) is { } input && Stretches.IsOfTheWholeLife(input.Quantity))
            {
                errors.Add(entry.Node.At, $"{change.Input} cannot change in a stretch: it is one for the whole life of an axle");
            }
            else if (change is Change.ToWord { Choice.Only: null })
            {
                errors.Add(entry.Node.At, $"{change.Input} must be one word in a stretch, not a choice of several");
            }
        }

        return read;
    }

    private ImmutableArray<Change> ReadShares(TableReader table, Scenario scenario)
    {
        if (table.Find("shares") is not { } entry || table.Numbers("shares") is not { } shares || scenario.Legs.IsEmpty)
        {
            return [];
        }

        double sum = shares.Sum();
        if (shares.Length != scenario.Legs.Length)
        {
            errors.Add(entry.Node.At, $"{Key}.shares must be {scenario.Legs.Length} numbers, one for each leg of use in the order of the file, not {shares.Length}");
        }
        else if (!(Math.Abs(sum - 1) <= ShareTolerance))
        {
            errors.Add(entry.Node.At, $"{Key}.shares must add up to 1, not {sum:G6}");
        }
        else
        {
            return [.. scenario.Legs.Zip(shares, (leg, share) => new Change.ToShare(leg.Name, share / sum))];
        }

        return [];
    }

    private bool ReadRenewed(TableReader table, Scenario scenario)
    {
        if (table.Find("renewed") is not { } entry)
        {
            return false;
        }

        foreach (TomlNode item in entry.Node is TomlArray array ? array.Items : [entry.Node])
        {
            if (item is not TomlText { Text: HistoryFormat.Dampers })
            {
                errors.Add(item.At, $"{Key}.renewed lists what is renewed, \"{HistoryFormat.Dampers}\", not {item.Shown}");
                return false;
            }
        }

        bool wears = scenario.Find(Quantities.DamperWear) is not null;
        if (!wears)
        {
            errors.Add(entry.KeyAt, $"{Key}.renewed = \"{HistoryFormat.Dampers}\" needs {Quantities.DamperWear.Section}.{Quantities.DamperWear.Key}: dampers that do not wear need no renewal; another damper stands under change");
        }

        return wears && entry.Node is not TomlArray { Items.Count: 0 };
    }
}
