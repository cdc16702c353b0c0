using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Fits;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Distributions;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Tables;

/// <summary>The columns of a table of measured values.</summary>
/// <param name="Values">The column of the values.</param>
/// <param name="Above">A column with what a value that is not known lies above; null for none.</param>
/// <param name="Below">A column with what it lies at or below; null for none.</param>
/// <param name="Count">A column with how many such values there are; null for one each.</param>
public sealed record MeasuredColumns(string Values, string? Above = null, string? Below = null, string? Count = null);

/// <summary>A table of measured values that was read.</summary>
/// <param name="File">The file, as the user named it.</param>
/// <param name="Digest">SHA-256 of its bytes.</param>
/// <param name="Columns">The columns.</param>
/// <param name="Observations">The values.</param>
public sealed record MeasuredTable(string File, string Digest, MeasuredColumns Columns, ImmutableArray<Observation> Observations)
{
    /// <summary>Reads a column of a CSV file.</summary>
    /// <param name="path">The file's path.</param>
    /// <param name="columns">The columns.</param>
    /// <exception cref="ScenarioException">The file cannot be read, or holds what is no value; carries every error found.</exception>
    public static MeasuredTable Read(string path, MeasuredColumns columns)
    {
        ErrorLog errors = new(path);
        byte[] bytes = [];
        try
        {
            bytes = FileBytes.Read(path, DataFolder.Largest);
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            errors.Add(FileBytes.Reason(e));
        }

        errors.ThrowIfAny();
        DataTable? table = DataTable.Read(bytes, errors.Add);
        ImmutableArray<Observation> observations = table is null ? [] : Observe(table, columns);
        errors.ThrowIfAny();
        return new MeasuredTable(path, Sha256.HexOf(bytes), columns, observations);
    }

    private static ImmutableArray<Observation> Observe(DataTable table, MeasuredColumns columns)
    {
        int values = table.Find(columns.Values, mustBe: true);
        int above = columns.Above is null ? -1 : table.Find(columns.Above, mustBe: true);
        int below = columns.Below is null ? -1 : table.Find(columns.Below, mustBe: true);
        int count = columns.Count is null ? -1 : table.Find(columns.Count, mustBe: true);
        if (!table.IsSound)
        {
            return [];
        }

        var cells = new CellReader(table);
        var observed = ImmutableArray.CreateBuilder<Observation>();
        foreach (IReadOnlyList<Cell> row in table.Rows.TakeWhile(_ => !table.IsHopeless))
        {
            double? value = cells.Number(row, values, Domain.Any);
            double? low = cells.Number(row, above, Domain.Any), high = cells.Number(row, below, Domain.Any);
            double? many = cells.Count(row, count);
            if (value is null && low is null && high is null)
            {
                if (row[values].Text.Length == 0)
                {
                    table.Fault(row[values].At, Missing(columns));
                }
            }
            else if (value is not null && (low ?? high) is not null)
            {
                table.Fault(row[values].At, "a value that is known lies neither above nor below another: leave one of them empty");
            }
            else if (low >= high)
            {
                table.Fault(row[below].At, $"{columns.Below} must be above {columns.Above} ({low:G6}), not {MessageText.Quote(row[below].Text)}");
            }
            else if (many is double n)
            {
                observed.Add(value is double known ? Observation.At(known, n)
                    : new Observation(low ?? double.NegativeInfinity, high ?? double.PositiveInfinity, n));
            }
        }

        return observed.ToImmutable();
    }

    private static string Missing(MeasuredColumns columns) => columns.Above is null && columns.Below is null
        ? $"{MessageText.OneLine(columns.Values)} must be a finite number; where it is only known to lie above or below something, name that column with --above or --below"
        : $"nothing is known of {MessageText.OneLine(columns.Values)} in this line";
}
