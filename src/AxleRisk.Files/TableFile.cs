using CsvHelper;

namespace AxleRisk.Files;

/// <summary>Writes tables as CSV (RFC 4180), whole or not at all.</summary>
public static class TableFile
{
    /// <summary>Writes a header and rows to a file: beside it first, then renamed, so that nothing is left half-written.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static void Write(string path, IReadOnlyList<string> header, IEnumerable<IReadOnlyList<string>> rows)
    {
        using var content = new MemoryStream();
        Write(content, header, rows);
        WholeFile.Write(path, content.ToArray());
    }

    /// <summary>Writes a header and rows to a stream.</summary>
    public static void Write(Stream stream, IReadOnlyList<string> header, IEnumerable<IReadOnlyList<string>> rows)
    {
        using CsvWriter csv = CsvWriter.Create(stream, CsvWriterOptions.Default with { NewLine = "\n" });
        foreach (IReadOnlyList<string> row in rows.Prepend(header))
        {
            foreach (string cell in row)
            {
                csv.WriteField(Harmless(cell));
            }

            csv.EndRecord();
        }
    }

    /// <summary>A text that a spreadsheet would run as a formula gets an apostrophe before it; numbers stay as they are.</summary>
    private static string Harmless(string cell) =>
        cell.Length > 0 && "=+-@\t\r".Contains(cell[0]) && !double.TryParse(cell, out double _) ? "'" + cell : cell;
}
