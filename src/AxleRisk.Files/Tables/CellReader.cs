using System.Globalization;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Tables;

/// <summary>Reads the cells of a table as numbers.</summary>
internal sealed class CellReader(DataTable table)
{
    /// <summary>The number in a cell; null where the cell is empty or, with the error told, wrong.</summary>
    /// <param name="row">The row.</param>
    /// <param name="column">The place of the column; below 0 for none.</param>
    /// <param name="domain">What makes sense.</param>
    public double? Number(IReadOnlyList<Cell> row, int column, Domain domain)
    {
        if (column < 0 || row[column].Text.Length == 0)
        {
            return null;
        }

        // No thousands separators: "1,5" must not become 15.
        if (double.TryParse(row[column].Text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && domain.Contains(value))
        {
            return value;
        }

        table.Fault(
            row[column].At,
            $"{MessageText.OneLine(table.Header[column].Text)} must be {domain.Describe()}, not {MessageText.Quote(row[column].Text)}");
        return null;
    }

    /// <summary>A whole number of at least 1; 1 where there is no such column, null where the cell is wrong.</summary>
    public double? Count(IReadOnlyList<Cell> row, int column)
    {
        if (column < 0)
        {
            return 1;
        }

        if (long.TryParse(row[column].Text, NumberStyles.None, CultureInfo.InvariantCulture, out long count)
            && count is > 0 and <= 1_000_000_000)
        {
            return count;
        }

        table.Fault(
            row[column].At,
            $"{MessageText.OneLine(table.Header[column].Text)} must be a whole number of at least 1, not {MessageText.Quote(row[column].Text)}");
        return null;
    }
}
