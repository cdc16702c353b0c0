using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Tables;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the columns of field records that tell of a look for the crack: where, how, and how deep a crack was found.</summary>
internal sealed class LookColumns(DataTable table, CellReader cells, Scenario scenario)
{
    private readonly int km = table.Find("looked_at_km");
    private readonly int method = table.Find("look_method");
    private readonly int depth = table.Find("crack_mm");
    private readonly int deviation = table.Find("crack_sd_mm");

    /// <summary>Reads a row; false, with the fault told, where it is wrong.</summary>
    /// <param name="row">The row.</param>
    /// <param name="isSound">Whether its life is.</param>
    /// <param name="whole">The distance at which it was whole, km; null where that is not stated.</param>
    /// <param name="failed">That by which it had failed, km; null where it had not.</param>
    /// <param name="look">Takes the look; null where there was none.</param>
    public bool Read(IReadOnlyList<Cell> row, bool isSound, double? whole, double? failed, out CrackLook? look)
    {
        look = null;
        double? at = cells.Number(row, km, Domain.Positive), mm = cells.Number(row, depth, Domain.Positive),
            sd = cells.Number(row, deviation, Domain.Positive);
        string name = method < 0 ? "" : row[method].Text;
        if (at is not { } looked)
        {
            return mm is null && name.Length == 0
                || Fault(row, km < 0 ? 0 : km, "a look for the crack needs looked_at_km: the distance at which it was done");
        }

        InspectionMethod? of = scenario.Crack is null ? null : scenario.Inspections.FirstOrDefault(m => m.Name == name);
        if (of is null)
        {
            return Fault(row, method < 0 ? km : method, scenario.Crack is null || scenario.Inspections.IsEmpty
                ? "a look needs a [crack] and [[inspections]] that it names"
                : $"look_method must be {MessageText.List([.. scenario.Inspections.Select(m => MessageText.Quote(m.Name))], "or")}, not {MessageText.Quote(name)}");
        }

        if (!isSound)
        {
            return false;
        }

        if (looked > (whole ?? failed))
        {
            return Fault(row, km, failed is null ? $"looked_at_km ({looked:R}) lies beyond survived_km ({whole:R})"
                : $"looked_at_km ({looked:R}) lies after the failure; it was last known to be whole at {whole ?? failed:R} km");
        }

        double wall = scenario.Crack?.Own?.DepthsMm[^1] ?? scenario.Find(Quantities.Wall)?.Value.Nominal ?? double.PositiveInfinity;
        if (mm > wall)
        {
            return Fault(row, depth, $"crack_mm ({mm:R}) is deeper than the wall of {wall:G6} mm");
        }

        if (mm is null != sd is null)
        {
            return Fault(row, mm is null ? deviation : depth, "crack_mm and crack_sd_mm belong together: the depth of a found crack and its accuracy");
        }

        look = new CrackLook(of, looked, mm is not null, mm, sd ?? 0);
        return true;
    }

    private bool Fault(IReadOnlyList<Cell> row, int column, string message)
    {
        table.Fault(row[column].At, message);
        return false;
    }
}
