using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Tables;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads gauge runs.</summary>
internal sealed class GaugesReader(DataTableReader tables, EvidenceNames names, ImmutableArray<Input> inputs, ImmutableArray<Leg> legs)
{
    /// <summary>The columns that are no input's.</summary>
    public static readonly string[] Columns =
        ["leg", "road_class", "speed_km_per_h", "payload_kg", "damage_per_km", "stress_rms_mpa", "sd_ln", "note"];

    /// <summary>Reads the table; no runs where there is none or, with the errors logged, where it is wrong.</summary>
    public GaugeData Read(TableReader? table)
    {
        if (table is null)
        {
            return GaugeData.None;
        }

        (DataTable Table, string File, string Digest)? opened = tables.Read(table);
        table.RejectUnknown();
        return opened is { } file ? new GaugeData(file.File, Runs(file.Table)) { Digest = file.Digest } : GaugeData.None;
    }

    private ImmutableArray<GaugeRun> Runs(DataTable table)
    {
        var factors = new FactorColumns(table, Columns, names);
        int[] at = [.. Columns.Select((c, i) => table.Find(c, mustBe: c == "sd_ln"))];
        if (at[0] < 0 && at[1] < 0)
        {
            table.Fault(table.Header[0].At, "one of the columns leg and road_class must be there: which road was driven");
        }

        if (at[4] < 0 && at[5] < 0)
        {
            table.Fault(table.Header[0].At, "one of the columns damage_per_km and stress_rms_mpa must be there: what was measured");
        }

        if (!table.IsSound || legs.IsEmpty)
        {
            return [];
        }

        var cells = new CellReader(table);
        var runs = ImmutableArray.CreateBuilder<GaugeRun>(table.Rows.Count);
        foreach (IReadOnlyList<Cell> row in table.Rows.TakeWhile(_ => !table.IsHopeless))
        {
            int? leg = LegOf(table, row, at);
            double? speed = cells.Number(row, at[2], Domain.Positive), payload = cells.Number(row, at[3], Domain.NonNegative);
            double? damage = cells.Number(row, at[4], Domain.Positive), stress = cells.Number(row, at[5], Domain.Positive);
            double? deviation = cells.Number(row, at[6], Domain.Positive);
            ImmutableArray<FieldMeasurement> stated = factors.Read(row);
            if ((damage is null) == (stress is null))
            {
                table.Fault(row[0].At, "one of damage_per_km and stress_rms_mpa must be stated in each line, and not both");
            }
            else if (deviation is null)
            {
                if (row[at[6]].Text.Length == 0)
                {
                    table.Fault(row[at[6]].At, "sd_ln must be stated: how well gauge and run are known, such as 0.2 for a fifth");
                }
            }
            else if (leg is int place)
            {
                runs.Add(new GaugeRun(
                    place,
                    [
                        .. stated, .. Stated(table, row, at[2], Quantities.Speed, place, speed),
                        .. Stated(table, row, at[3], Quantities.Payload, null, payload),
                    ],
                    damage, stress, deviation.Value, row[0].At.Line));
            }
        }

        return runs.ToImmutable();
    }

    private IEnumerable<FieldMeasurement> Stated(DataTable table, IReadOnlyList<Cell> row, int column, Quantity quantity, int? leg,
        double? value)
    {
        if (value is not double number)
        {
            yield break;
        }

        if (inputs.FirstOrDefault(i => i.Quantity == quantity && i.Leg == leg) is { } input)
        {
            yield return new FieldMeasurement(input.Name, number, 0);
        }
        else
        {
            table.Fault(row[column].At, $"the scenario states no {quantity.Label}, so a run cannot either");
        }
    }

    private int? LegOf(DataTable table, IReadOnlyList<Cell> row, int[] at)
    {
        string name = at[0] < 0 ? "" : row[at[0]].Text, road = at[1] < 0 ? "" : row[at[1]].Text;
        string[] all = [.. legs.Select(l => l.Name)];
        if (name.Length > 0)
        {
            int leg = Array.IndexOf(all, name);
            if (leg < 0)
            {
                table.Fault(row[at[0]].At, $"there is no leg {MessageText.Quote(name)}{NearestName.Hint(name, all)}");
            }

            return leg < 0 ? null : leg;
        }

        int ofClass = Array.FindIndex([.. legs], l => road.Length == 1 && l.RoadClass == road[0]);
        if (road.Length == 0)
        {
            table.Fault(row[0].At, "a run needs its leg, or the class of its road in road_class");
        }
        else if (ofClass < 0)
        {
            table.Fault(row[at[1]].At, $"no leg of the use has a road of class {MessageText.Quote(road)}; name the leg that it is most like");
        }

        return ofClass < 0 ? null : ofClass;
    }
}
