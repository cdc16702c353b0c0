using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Tables;

/// <summary>
/// A table of a CSV file (RFC 4180) whose first line names its columns, with the place of every cell. Cells are separated by commas,
/// or where the first line has none by semicolons or tabulators; numbers have a decimal point.
/// </summary>
internal sealed class DataTable
{
    private const int MostErrors = 20;

    private readonly Action<Position, string> error;
    private readonly char separator;
    private int errors;

    private DataTable(Action<Position, string> error, string firstLine)
    {
        this.error = error;
        separator = !firstLine.Contains(',') && firstLine.IndexOfAny([';', '\t']) is >= 0 and var at ? firstLine[at] : ',';
    }

    /// <summary>The names of the columns.</summary>
    public IReadOnlyList<Cell> Header { get; private set; } = [];

    /// <summary>The rows, each as long as the header; empty lines are none.</summary>
    public IReadOnlyList<IReadOnlyList<Cell>> Rows { get; private set; } = [];

    /// <summary>Whether nothing was wrong with it.</summary>
    public bool IsSound => errors == 0;

    /// <summary>Whether so much is wrong that nobody reads more.</summary>
    public bool IsHopeless => errors >= MostErrors;

    /// <summary>A table; null, with the errors told, where the bytes are none.</summary>
    /// <param name="bytes">The bytes of the file.</param>
    /// <param name="error">Takes errors with their places.</param>
    public static DataTable? Read(byte[] bytes, Action<Position, string> error)
    {
        if (Utf8Text.Decode(bytes, out Position invalidAt) is not string text)
        {
            error(invalidAt, "the text is not valid UTF-8");
            return null;
        }

        string[] lines = text.Split('\n');
        int first = Array.FindIndex(lines, l => l.Trim().Length > 0);
        if (first < 0)
        {
            error(new Position(1, 1), "there is nothing in the file: a table has names in its first line and values below");
            return null;
        }

        var table = new DataTable(error, lines[first]);
        table.Header = table.Cells(lines[first], first + 1);
        List<IReadOnlyList<Cell>> rows = [];
        for (int i = first + 1; i < lines.Length && !table.IsHopeless; i++)
        {
            if (lines[i].Trim().Length > 0 && table.Cells(lines[i], i + 1) is { Count: > 0 } cells)
            {
                if (cells.Count == table.Header.Count)
                {
                    rows.Add(cells);
                }
                else
                {
                    table.Fault(cells[^1].At, $"this line holds {cells.Count} values, but the first line names {table.Header.Count} columns");
                }
            }
        }

        table.Rows = rows;
        if (table.IsSound && rows.Count == 0)
        {
            table.Fault(new Position(first + 1, 1), "there is no row below the names of the columns");
        }

        return table;
    }

    /// <summary>The place of a column; -1, with the error told where it must be there.</summary>
    public int Find(string name, bool mustBe = false)
    {
        for (int i = 0; i < Header.Count; i++)
        {
            if (Header[i].Text == name)
            {
                return i;
            }
        }

        if (mustBe)
        {
            Fault(Header[0].At, $"there is no column {MessageText.Quote(name)}{NearestName.Hint(name, [.. Header.Select(h => h.Text)])}");
        }

        return -1;
    }

    /// <summary>Tells of an error.</summary>
    public void Fault(Position at, string message)
    {
        errors++;
        if (errors <= MostErrors)
        {
            error(at, message);
        }
    }

    private List<Cell> Cells(string line, int number)
    {
        line = line.TrimEnd('\r');
        List<Cell> cells = [];
        for (int at = 0; at <= line.Length;)
        {
            int start = at;
            while (at < line.Length && line[at] == ' ')
            {
                at++;
            }

            if (at < line.Length && line[at] == '"')
            {
                int end = at + 1;
                while (end < line.Length && (line[end] != '"' || (end + 1 < line.Length && line[end + 1] == '"')))
                {
                    end += line[end] == '"' ? 2 : 1;
                }

                if (end >= line.Length)
                {
                    Fault(new Position(number, at + 1), "a quotation mark is not closed in its line");
                    return [];
                }

                cells.Add(new Cell(line[(at + 1)..end].Replace("\"\"", "\"", StringComparison.Ordinal).Trim(),
                    new Position(number, at + 1)));
                int next = line.IndexOf(separator, end);
                at = next < 0 ? line.Length + 1 : next + 1;
                continue;
            }

            int stop = line.IndexOf(separator, start);
            stop = stop < 0 ? line.Length : stop;
            cells.Add(new Cell(line[start..stop].Trim(), new Position(number, Math.Min(at, stop) + 1)));
            at = stop + 1;
        }

        return cells;
    }
}

/// <summary>One cell of a table.</summary>
/// <param name="Text">Its text, without blanks around it; empty where there is nothing.</param>
/// <param name="At">Where it stands.</param>
internal readonly record struct Cell(string Text, Position At);
