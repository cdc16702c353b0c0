using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the wheel bearing, and which modes of failure are switched off: their inputs are checked and then left out.</summary>
internal sealed class ModesReader(ErrorLog errors, QuantityReader quantities, InputCollector inputs)
{
    private const string Yield = "yield";
    private const string Bearing = Quantities.BearingSection;

    /// <summary>Reads both tables; returns the kind of the bearing, null where it is no mode of failure.</summary>
    public BearingKind? Read(TableReader root)
    {
        BearingKind? kind = ReadBearing(root);
        List<string> off = ReadOff(root.Inner("modes"));
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

    private BearingKind? ReadBearing(TableReader root)
    {
        if (root.Inner(Bearing) is not TableReader table)
        {
            if (root.Find(Bearing) is not null)
            {
                inputs.MarkWrong(Bearing);
            }

            return null;
        }

        if (table.Find("kind") is null)
        {
            inputs.MarkWrong(Bearing);
        }

        BearingKind? kind = table.Word("kind", FormatWords.Bearings);
        quantities.ReadSection(table, Bearing);
        table.RejectUnknown(QuantityReader.OtherSection);
        return kind;
    }

    private List<string> ReadOff(TableReader? table)
    {
        if (table is null)
        {
            return [];
        }

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
