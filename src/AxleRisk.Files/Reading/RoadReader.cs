using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the road of a leg and the speed on it.</summary>
internal sealed class RoadReader(ErrorLog errors, QuantityReader quantities)
{
    /// <summary>Reads a road of its own.</summary>
    /// <param name="table">The leg's table.</param>
    /// <param name="leg">The leg's index in the inputs.</param>
    /// <param name="roadClass">The class of its roughness; null where the roughness is stated outright.</param>
    /// <returns>Whether class and roughness are as they should be.</returns>
    public bool Read(TableReader table, int leg, out char? roadClass)
    {
        bool hasClass = table.Find("road_class") is not null;
        bool hasRoughness = table.Find(Quantities.Roughness.Key) is not null;
        roadClass = table.Word("road_class", FormatWords.RoadClasses);

        quantities.Read(table, Quantities.Speed, leg);
        if (hasClass == hasRoughness)
        {
            string found = hasClass ? "not both" : "there is neither";
            errors.Add(hasClass ? table.Find("road_class")!.KeyAt : table.Table.At,
                $"{table.NameOf("road_class")} or {Quantities.Roughness.Key} must be stated, {found}");
        }
        else if (hasRoughness)
        {
            quantities.Read(table, Quantities.Roughness, leg);
            RejectWithinClass(table);
        }
        else
        {
            quantities.Read(table, Quantities.RoughnessWithinClass, leg);
        }

        ReadCorrugation(table, leg);
        quantities.Read(table, Quantities.LegDamageRatio, leg);
        return hasClass != hasRoughness && (roadClass is not null || !hasClass);
    }

    /// <summary>Reads what a leg that is like another states in place of the other's values; the road itself is the other's.</summary>
    /// <param name="table">The leg's table.</param>
    /// <param name="leg">The leg's index in the inputs.</param>
    /// <param name="other">The leg it is like; null where that is wrong.</param>
    public void ReadChanges(TableReader table, int leg, Leg? other)
    {
        foreach (string key in new[] { "road_class", Quantities.Roughness.Key })
        {
            if (table.Find(key) is TomlEntry entry)
            {
                errors.Add(entry.KeyAt, $"{table.NameOf(key)} is that of the leg it is like; leave out one of the two");
            }
        }

        Quantity[] stated =
        [
            .. new[]
            {
                Quantities.Speed, Quantities.RoughnessWithinClass, Quantities.CorrugatedShare, Quantities.CorrugationWavelength,
                Quantities.CorrugationRms, Quantities.LegDamageRatio,
            }.Where(q => table.Find(q.Key) is not null),
        ];
        if (other is { RoadClass: null })
        {
            RejectWithinClass(table);
        }

        foreach (Quantity quantity in stated)
        {
            quantities.Read(table, quantity, leg);
        }
    }

    private void RejectWithinClass(TableReader table)
    {
        if (table.Find(Quantities.RoughnessWithinClass.Key) is TomlEntry within)
        {
            errors.Add(within.KeyAt,
                $"{table.NameOf(within.Key)} belongs to a leg with a road_class, not to one with {Quantities.Roughness.Key}");
        }
    }

    private void ReadCorrugation(TableReader table, int leg)
    {
        Value? corrugated = quantities.Read(table, Quantities.CorrugatedShare, leg);
        bool isStated = table.Table.Find(Quantities.CorrugatedShare.Key) is not null;
        foreach (Quantity quantity in new[] { Quantities.CorrugationWavelength, Quantities.CorrugationRms })
        {
            if (corrugated is not Value.Certain(0))
            {
                quantities.Read(table, quantity, leg);
            }
            else if (table.Find(quantity.Key) is TomlEntry entry && !isStated)
            {
                errors.Add(entry.KeyAt, $"{table.NameOf(quantity.Key)} needs a corrugated_share");
            }
        }
    }
}
