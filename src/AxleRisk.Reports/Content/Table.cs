using System.Collections.Immutable;

namespace AxleRisk.Reports.Content;

/// <summary>A table. The first column names what its row is about.</summary>
/// <param name="Caption">What it shows.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows, each as long as the columns.</param>
public sealed record Table(string Caption, ImmutableArray<Column> Columns, ImmutableArray<ImmutableArray<Cell>> Rows) : Block
{
    /// <summary>Its number in the report, from 1.</summary>
    public int Number { get; init; }

    /// <summary>
    /// The table for a page: without bars made of characters and columns with nothing in them.
    /// </summary>
    public Table ForPage()
    {
        int[] kept = [.. Enumerable.Range(0, Columns.Length).Where(c => !Columns[c].IsBar && Rows.Any(row => !row[c].IsEmpty))];
        return this with
        {
            Columns = [.. kept.Select(c => Columns[c])],
            Rows = [.. Rows.Select(row => kept.Select(c => row[c]).ToImmutableArray())],
        };
    }

    /// <summary>The table with one more column at a place; texts only where <paramref name="cells"/> have no picture.</summary>
    public Table WithColumn(int place, Column column, IEnumerable<Cell> cells) => this with
    {
        Columns = Columns.Insert(place, column),
        Rows = [.. Rows.Zip(cells, (row, cell) => row.Insert(place, cell))],
    };
}

/// <summary>A column of a table.</summary>
/// <param name="Header">Its heading; may be empty where the cells speak for themselves.</param>
/// <param name="IsText">Whether it is set left as text, not right as numbers.</param>
public sealed record Column(string Header, bool IsText)
{
    /// <summary>A heading for where there is little room; null for the same.</summary>
    public string? Short { get; init; }

    /// <summary>Whether lines of text set it right though it is the first.</summary>
    public bool IsRight { get; init; }

    /// <summary>Whether lines of text draw a rule before it.</summary>
    public bool HasRule { get; init; }

    /// <summary>Whether it holds bars made of characters, which a page leaves out.</summary>
    public bool IsBar { get; init; }
}

/// <summary>A cell of a table.</summary>
/// <param name="Text">Its text.</param>
/// <param name="Picture">A small picture in place of the text; null where there is none.</param>
/// <param name="Note">Small print under the text; empty where there is none.</param>
public sealed record Cell(string Text, Picture? Picture = null, string Note = "")
{
    /// <summary>Whether there is nothing in it.</summary>
    public bool IsEmpty => Text.Length == 0 && Picture is null && Note.Length == 0;
}
