using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads one leg of use.</summary>
internal sealed class LegReader(ErrorLog errors, QuantityReader quantities)
{
    private readonly RoadReader roads = new(errors, quantities);

    /// <summary>Reads a leg and its quantities; null where its name, road or share is wrong.</summary>
    public Leg? Read(TomlTable node, int index, HashSet<string> names)
    {
        string? name = LegName.Read(new TableReader(node, $"use.legs[{index + 1}]", UseFormat.Leg, errors), names, errors);
        TableReader table = new(node, name is null ? $"use.legs[{index + 1}]" : $"legs.{name}", UseFormat.Leg, errors);
        double? share = table.Number("share");
        bool isSound = roads.Read(table, index, out char? roadClass);
        new EventsReader(errors, quantities).Read(table, index, UseFormat.Event);
        table.RejectUnknown(QuantityReader.OtherSection);
        return name is not null && share is not null && isSound ? new Leg(name, roadClass, share.Value) : null;
    }
}
