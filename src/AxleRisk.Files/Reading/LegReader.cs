using System.Text.RegularExpressions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads one leg of use.</summary>
internal sealed partial class LegReader(ErrorLog errors, QuantityReader quantities)
{
    private static readonly Domain Share = new(0, 1, LowIncluded: false);

    private static readonly Dictionary<string, char> Classes = "ABCDEFGH".ToDictionary(c => c.ToString());

    /// <summary>Reads a leg and its quantities; null where its name, road or share is wrong.</summary>
    public Leg? Read(TomlTable node, int index, HashSet<string> names)
    {
        string? name = ReadName(node, index, names);
        TableReader table = new(node, name is null ? $"use.legs[{index + 1}]" : $"legs.{name}", errors);
        table.Find("name");
        double? share = table.RequiredNumber("share", Share);
        bool hasClass = table.Find("road_class") is not null;
        bool hasRoughness = table.Find(Quantities.Roughness.Key) is not null;
        char? roadClass = table.Word("road_class", Classes);

        quantities.Read(table, Quantities.Speed, index);
        if (hasClass == hasRoughness)
        {
            string found = hasClass ? "not both" : "there is neither";
            errors.Add(hasClass ? table.Find("road_class")!.KeyAt : node.At, $"{table.NameOf("road_class")} or {Quantities.Roughness.Key} must be stated, {found}");
        }
        else if (hasRoughness)
        {
            quantities.Read(table, Quantities.Roughness, index);
            if (table.Find(Quantities.RoughnessWithinClass.Key) is TomlEntry within)
                errors.Add(within.KeyAt, $"{table.NameOf(within.Key)} belongs to a leg with a road_class, not to one with {Quantities.Roughness.Key}");
        }
        else
        {
            quantities.Read(table, Quantities.RoughnessWithinClass, index);
        }

        ReadCorrugation(table, index);
        table.Find(Quantities.RoughnessWithinClass.Key);
        table.RejectUnknown(QuantityReader.OtherSection);
        bool sound = name is not null && share is not null && hasClass != hasRoughness && (roadClass is not null || !hasClass);
        return sound ? new Leg(name!, roadClass, share!.Value) : null;
    }

    private void ReadCorrugation(TableReader table, int index)
    {
        Value? corrugated = quantities.Read(table, Quantities.CorrugatedShare, index);
        bool isStated = table.Table.Find(Quantities.CorrugatedShare.Key) is not null;
        foreach (Quantity quantity in new[] { Quantities.CorrugationWavelength, Quantities.CorrugationRms })
        {
            if (corrugated is not Value.Certain(0))
                quantities.Read(table, quantity, index);
            else if (table.Find(quantity.Key) is TomlEntry entry && !isStated)
                errors.Add(entry.KeyAt, $"{table.NameOf(quantity.Key)} needs a corrugated_share");
        }
    }

    private string? ReadName(TomlTable node, int index, HashSet<string> names)
    {
        TableReader table = new(node, $"use.legs[{index + 1}]", errors);
        if (table.RequiredText("name") is not string name)
            return null;
        Position at = node.Find("name")!.Node.At;
        if (!NameForm().IsMatch(name))
            errors.Add(at, $"the name of a leg is up to 40 letters, digits, - and _, not {Plain.Quote(name)}");
        else if (!names.Add(name))
            errors.Add(at, $"there are two legs with the name {Plain.Quote(name)}");
        else
            return name;
        return null;
    }

    [GeneratedRegex(@"\A[A-Za-z0-9_-]{1,40}\z")]
    private static partial Regex NameForm();
}
