using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Tables;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the records of the field.</summary>
internal sealed class FieldReader(DataTableReader tables, EvidenceNames names)
{
    /// <summary>The columns that are no input's.</summary>
    public static readonly string[] Columns = [
        "failed_at_km", "survived_km", "failed_by_km", "vehicles", "group", "note",
        "looked_at_km", "look_method", "crack_mm", "crack_sd_mm",
    ];

    /// <summary>Reads the table; no records where there is none or, with the errors logged, where it is wrong.</summary>
    public FieldData Read(TableReader? table, Scenario scenario)
    {
        if (table is null)
        {
            return FieldData.None;
        }

        double? until = table.Number("until_km");
        (DataTable Table, string File, string Digest)? opened = tables.Read(table);
        table.RejectUnknown();
        return opened is { } file ? new FieldData(file.File,
            Records(file.Table, until ?? double.PositiveInfinity, scenario))
        { Digest = file.Digest } : FieldData.None;
    }

    private ImmutableArray<FieldRecord> Records(DataTable table, double until, Scenario scenario)
    {
        var factors = new FactorColumns(table, Columns, names);
        int[] at = [.. Columns.Select(c => table.Find(c))];
        if (at[0] < 0 && at[1] < 0 && at[2] < 0)
        {
            table.Fault(table.Header[0].At, "one of the columns failed_at_km, survived_km and failed_by_km must be there");
        }

        if (table.Rows.Count > FieldData.MostRows)
        {
            table.Fault(table.Rows[FieldData.MostRows][0].At, $"there are more than {FieldData.MostRows:#,0} rows: join equal ones with a count in vehicles");
        }

        if (!table.IsSound)
        {
            return [];
        }

        var cells = new CellReader(table);
        var looks = new LookColumns(table, cells, scenario);
        var records = ImmutableArray.CreateBuilder<FieldRecord>(table.Rows.Count);
        foreach (IReadOnlyList<Cell> row in table.Rows.TakeWhile(_ => !table.IsHopeless))
        {
            double? failedAt = cells.Number(row, at[0], Domain.Positive), survived = cells.Number(row, at[1], Domain.NonNegative);
            double? failedBy = cells.Number(row, at[2], Domain.Positive), vehicles = cells.Count(row, at[3]);
            bool hasLife = Life(table, row, at, failedAt, survived, failedBy) & IsWithin(table, row, at, until, failedAt, survived,
                failedBy);
            ImmutableArray<FieldMeasurement> measured = factors.Read(row);
            bool isLooked = looks.Read(row, hasLife, failedAt ?? survived, failedAt ?? failedBy, out CrackLook? look);
            if (hasLife && isLooked && vehicles is double count)
            {
                records.Add(new FieldRecord(
                    Math.Max(failedAt ?? survived ?? 0, look?.Km ?? 0), failedAt ?? failedBy ?? double.PositiveInfinity, count, at[4] < 0 ? ""
                        : row[at[4]].Text, measured,
                    row[0].At.Line)
                { Look = look });
            }
        }

        return records.ToImmutable();
    }

    private static bool Life(DataTable table, IReadOnlyList<Cell> row, int[] at, double? failedAt, double? survived, double? failedBy)
    {
        if (failedAt is null && survived is null && failedBy is null)
        {
            // What is wrong with a cell was told where it was read.
            if (at.Take(3).All(i => i < 0 || row[i].Text.Length == 0))
            {
                table.Fault(row[0].At, "this line says nothing of the life: state failed_at_km, survived_km or failed_by_km");
            }

            return false;
        }

        if (failedAt is not null && (survived ?? failedBy) is not null)
        {
            table.Fault(row[at[0]].At, "a vehicle that failed at a known distance has neither survived_km nor failed_by_km: leave these empty");
            return false;
        }

        if (survived >= failedBy)
        {
            table.Fault(row[at[2]].At, $"failed_by_km ({failedBy:R}) must be above survived_km ({survived:R}): it was whole at the one and broken at the other");
            return false;
        }

        return true;
    }

    private static bool IsWithin(DataTable table, IReadOnlyList<Cell> row, int[] at, double until, params double?[] distances)
    {
        for (int i = 0; i < distances.Length; i++)
        {
            if (distances[i] > until)
            {
                table.Fault(row[at[i]].At, $"{Columns[i]} ({distances[i]:R}) lies beyond the end of the data, field.until_km = {until:R}");
                return false;
            }
        }

        return true;
    }
}
