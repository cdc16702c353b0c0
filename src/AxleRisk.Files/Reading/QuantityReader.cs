using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the quantities of a table into inputs; what is not stated gets its default.</summary>
internal sealed class QuantityReader(ErrorLog errors, ValueReader values, InputCollector inputs)
{
    /// <summary>Reads one quantity and adds it to the inputs; null where it is wrong or missing, or does not apply.</summary>
    /// <param name="table">The table it stands in.</param>
    /// <param name="quantity">The quantity.</param>
    /// <param name="leg">The index of the leg, for a quantity of the legs.</param>
    /// <param name="otherwise">The default in place of the quantity's own, if any.</param>
    /// <param name="source">Where that comes from.</param>
    /// <param name="happening">The event of the leg, for a quantity of events.</param>
    /// <param name="section">The name of the section, for a quantity of further sections.</param>
    public Value? Read(
        TableReader table, Quantity quantity, int? leg = null, Value? otherwise = null, string? source = null, string? happening = null,
        string? section = null)
    {
        Value? standard = otherwise ?? quantity.Default;
        string name = table.NameOf(quantity.Key);
        if (otherwise is null && IsLeftOut(table, quantity, name))
        {
            return null;
        }

        TomlEntry? entry = standard is null ? table.Require(quantity.Key) : table.Find(quantity.Key);
        Value? value = entry is null ? standard : values.Read(entry.Node, name, quantity.Domain);
        if (value is not null)
        {
            inputs.Add(new Input(name, quantity, leg, value, IsDefault: entry is null)
            {
                OwnSource = entry is null ? source : null,
                Event = happening,
                Section = section,
            });
        }
        else
        {
            inputs.MarkWrong(name);
        }

        return value;
    }

    /// <summary>Reads all quantities of a section.</summary>
    public void ReadSection(TableReader table, string section)
    {
        foreach (Quantity quantity in Quantities.All.Where(q => q.Section == section))
        {
            Read(table, quantity);
        }
    }

    // Nothing stated of what may be left out, or of what has no meaning without another key.
    private bool IsLeftOut(TableReader table, Quantity quantity, string name)
    {
        TomlEntry? entry = table.Find(quantity.Key);
        if (quantity.Needs is string needed && table.Table.Find(needed) is null)
        {
            if (entry is not null)
            {
                errors.Add(entry.KeyAt, $"{name} needs a {needed}");
                inputs.MarkWrong(name);
            }

            return true;
        }

        return entry is null && quantity.Without is not null;
    }

    /// <summary>Says of a key that is not known in one section where else it is known.</summary>
    public static string? OtherSection(string key)
    {
        string[] tables =
        [
            .. Quantities.All.Where(q => q.Key == key).Select(q => q.Section)
                .Select(s => s.StartsWith(Quantities.LegSection, StringComparison.Ordinal) || s == CheckedSection.Table ? $"[[{s}]]" : $"[{s}]"),
        ];
        return tables.Length == 0 ? null : "; it belongs in " + MessageText.List(tables, "or");
    }
}
