using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the wheel bearing, and which modes of failure are switched off: their inputs are checked and then left out.</summary>
internal sealed class ModesReader(ErrorLog errors, QuantityReader quantities, InputCollector inputs)
{
    private const string Yield = "yield";
    private const string Bearing = Quantities.BearingSection;

    private static readonly Dictionary<string, BearingKind> Kinds = new()
    {
        ["ball"] = BearingKind.Ball,
        ["roller"] = BearingKind.Roller,
    };

    /// <summary>Reads both tables; returns the kind of the bearing, null where it is no mode of failure.</summary>
    public BearingKind? Read(TableReader root)
    {
        BearingKind? kind = ReadBearing(root.Find(Bearing));
        List<string> off = ReadOff(root.Find("modes"));
        if (off.Contains(Yield))
        {
            inputs.Remove(i => i.Quantity == Quantities.YieldStrength || i.Quantity == Quantities.YieldScatter);
        }

        if (!off.Contains(Bearing))
        {
            return kind;
        }

        inputs.Remove(i => i.Quantity.Section == Bearing);
        return null;
    }

    private BearingKind? ReadBearing(TomlEntry? entry)
    {
        if (entry is null)
        {
            return null;
        }

        if (entry.Node is not TomlTable node)
        {
            errors.Add(entry.Node.At, $"{Bearing} must be one table under [{Bearing}]");
            inputs.MarkWrong(Bearing);
            return null;
        }

        TableReader table = new(node, Bearing, errors);
        if (table.Require("kind") is null)
        {
            inputs.MarkWrong(Bearing);
        }

        BearingKind? kind = table.Word("kind", Kinds);
        quantities.ReadSection(table, Bearing);
        table.RejectUnknown(QuantityReader.OtherSection);
        return kind;
    }

    private List<string> ReadOff(TomlEntry? entry)
    {
        if (entry is null)
        {
            return [];
        }

        if (entry.Node is not TomlTable node)
        {
            errors.Add(entry.Node.At, "modes must be one table under [modes]");
            return [];
        }

        TableReader table = new(node, "modes", errors);
        TomlEntry? off = table.Require("off");
        table.RejectUnknown();
        List<string> names = [];
        foreach (TomlNode item in off?.Node is TomlArray array ? array.Items : off is null ? [] : [off.Node])
        {
            if (item is TomlText { Text: Yield or Bearing } text)
            {
                names.Add(text.Text);
            }
            else
            {
                errors.Add(item.At, $"modes.off lists modes of failure to leave out, \"{Yield}\" or \"{Bearing}\", not {item.Shown}");
            }
        }

        return names;
    }
}
