using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads an S-N curve of the user's own: its lines, or points that lines join.</summary>
internal sealed class OwnCurveReader(ErrorLog errors)
{
    /// <summary>Reads the table; null, with the errors logged, where it is wrong.</summary>
    public OwnCurve? Read(TableReader table)
    {
        ImmutableArray<SnLine> lines = ReadLines(table);
        double cutOff = table.Number("cut_off_mpa") ?? 0;
        string? level = table.Choice("stated_as");
        double? deviation = table.Number("sd_log10_n");
        double below = table.Number("design_below_mean") ?? 2;
        double reference = table.Number("thickness_reference_mm") ?? 25;
        string? source = table.Line("source");
        if (level != DetailFormat.Design && table.Find("design_below_mean") is TomlEntry idle)
        {
            errors.Add(idle.KeyAt, $"{table.NameOf("design_below_mean")} belongs to a curve stated as \"design\"");
        }

        bool isSound = table.RejectUnknown() && !lines.IsEmpty && Falls(table, lines, cutOff);
        return isSound && level is not null && deviation is double sd && source is not null
            ? new OwnCurve([.. lines.Select(l => l.Slope)], [.. lines.Select(l => l.Log10A)], source)
            {
                CutOffMPa = cutOff,
                StandardDeviation = sd,
                DeviationsBelowMean = level == DetailFormat.Design ? below : 0,
                ThicknessReferenceMm = reference,
            }
            : null;
    }

    private ImmutableArray<SnLine> ReadLines(TableReader table)
    {
        bool hasLines = table.Find("slopes") is not null || table.Find("log10_a") is not null;
        bool hasPoints = table.Find("cycles") is not null || table.Find("range_mpa") is not null;
        if (hasLines == hasPoints)
        {
            errors.Add(
                table.Table.At,
                $"{table.NameOf("slopes")} and log10_a, or cycles and range_mpa, must be stated, {(hasLines ? "not both" : "there is neither")}");
            return [];
        }

        (string first, string second) = hasLines ? ("slopes", "log10_a") : ("cycles", "range_mpa");
        double[]? x = table.Require(first) is null ? null : table.Numbers(first);
        double[]? y = table.Require(second) is null ? null : table.Numbers(second);
        if (x is null || y is null)
        {
            return [];
        }

        if (x.Length != y.Length)
        {
            errors.Add(table.Find(second)!.Node.At, $"{table.NameOf(second)} must be as many as {first}: {x.Length}, not {y.Length}");
            return [];
        }

        return hasLines ? [.. x.Zip(y, (slope, log10A) => new SnLine(slope, log10A))] : Through(table, x, y);
    }

    private ImmutableArray<SnLine> Through(TableReader table, double[] cycles, double[] ranges)
    {
        for (int i = 1; i < cycles.Length; i++)
        {
            (string Key, double Before, double Here)? wrong = !(cycles[i] > cycles[i - 1]) ? ("cycles", cycles[i - 1], cycles[i])
                : !(ranges[i] < ranges[i - 1]) ? ("range_mpa", ranges[i - 1], ranges[i]) : null;
            if (wrong is var (key, before, here))
            {
                errors.Add(table.Find(key)!.Node.At,
                    $"{table.NameOf(key)} must {(key == "cycles" ? "rise" : "fall")} from point to point, not go from {before:G6} to {here:G6}");
                return [];
            }
        }

        // Points on one straight line make one line of it: a knee is where the slope changes.
        List<SnLine> lines = [];
        for (int i = 1; i < cycles.Length; i++)
        {
            SnLine line = SnLine.Through(cycles[i - 1], ranges[i - 1], cycles[i], ranges[i]);
            if (lines.Count == 0 || !(Math.Abs(line.Slope / lines[^1].Slope - 1) < 1e-9))
            {
                lines.Add(line);
            }
        }

        return [.. lines];
    }

    // Each line must meet the next at a smaller range than the last knee, and the cut-off must not be above the last.
    private bool Falls(TableReader table, ImmutableArray<SnLine> lines, double cutOff)
    {
        Position at = table.Find("slopes")?.Node.At ?? table.Table.At;
        double last = double.PositiveInfinity;
        for (int i = 1; i < lines.Length; i++)
        {
            double knee = lines[i - 1].Slope == lines[i].Slope ? double.NaN : lines[i - 1].MeetsMPa(lines[i]);
            if (!(knee > 1e-3 && knee < 1e5))
            {
                errors.Add(at, $"{table.NameOf("slopes")}: the lines {i} and {i + 1} do not meet at a stress range from 0.001 to 100000 MPa");
                return false;
            }

            if (!(knee < last))
            {
                errors.Add(at,
                    $"{table.NameOf("slopes")}: the knees must fall, and lines {i} and {i + 1} meet at {knee:G4} MPa, those before at {last:G4}");
                return false;
            }

            last = knee;
        }

        if (!(cutOff <= last))
        {
            errors.Add(table.Find("cut_off_mpa")!.Node.At,
                $"{table.NameOf("cut_off_mpa")} must not be above the last knee, {last:G6} MPa, not {cutOff:G6}");
            return false;
        }

        return true;
    }
}
