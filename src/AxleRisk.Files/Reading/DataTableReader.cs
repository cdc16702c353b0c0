using AxleRisk.Files.Distributions;
using AxleRisk.Files.Tables;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Opens the tables that a scenario names.</summary>
internal sealed class DataTableReader(ErrorLog errors, DataFiles data)
{
    /// <summary>The table that the key <c>file</c> names, with its name; null, with the errors logged, where there is none.</summary>
    public (DataTable Table, string File, string Digest)? Read(TableReader of)
    {
        if (of.Text("file") is not string file)
        {
            return null;
        }

        Position at = of.Table.Find("file")!.Node.At;
        if (data.Read(file, out string reason) is not byte[] bytes)
        {
            errors.Add(at, $"{of.NameOf("file")}: cannot read {MessageText.Quote(file)}: {reason}");
            return null;
        }

        return DataTable.Read(bytes, (place, message) => errors.AddInDataFile(file, place, at, message)) is { } table
            ? (table, file, Sha256.HexOf(bytes)) : null;
    }
}
