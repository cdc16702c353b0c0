using System.Collections.Immutable;
using AxleRisk.App.Text;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>The tables of the answers as tables of a report: same rows, same figures.</summary>
internal static class ReportTable
{
    /// <summary>Pads that keep columns of text in line mean nothing in a report.</summary>
    private static readonly char[] Pads = [' ', '|'];

    /// <summary>A table of a report; bars made of characters are left out, and so are columns with nothing in them.</summary>
    /// <param name="table">The table of an answer.</param>
    /// <param name="caption">What it shows.</param>
    /// <param name="headers">Headings in place of its own, where those lean on what stands around them; none to keep them.</param>
    public static Table Of(TextTable table, string caption, params string[] headers)
    {
        (int Place, string Header, bool IsLeft)[] columns =
        [
            .. table.Columns.Select((c, i) => (c.Place, headers.Length > 0 ? headers[i] : c.Header.Trim(Pads), c.IsLeft))
                .Where(c => table.Rows.Any(row => TextTable.Cell(row, c.Place).Length > 0)),
        ];
        return new Table(
            caption,
            [.. columns.Select(c => new Column(c.Header, c.IsLeft))],
            [.. table.Rows.Select(row => columns.Select(c => new Cell(TextTable.Cell(row, c.Place).Trim(Pads))).ToImmutableArray())]);
    }
}
