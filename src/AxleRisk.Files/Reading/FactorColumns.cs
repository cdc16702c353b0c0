using System.Collections.Immutable;
using System.Globalization;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Tables;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>The columns of a table that are named after inputs: values measured on the vehicle of a row.</summary>
internal sealed class FactorColumns
{
    private const string AccuracySuffix = " sd";

    private readonly DataTable table;
    private readonly List<(EvidenceNames.Target Target, int Value, int Accuracy)> columns = [];

    /// <summary>Finds them; a column that is neither one of these nor known otherwise is an error.</summary>
    /// <param name="table">The table.</param>
    /// <param name="known">The other columns.</param>
    /// <param name="names">What is uncertain.</param>
    /// <param name="also">Says of a name what it stands for besides; null for nothing.</param>
    public FactorColumns(DataTable table, IReadOnlyList<string> known, EvidenceNames names, Func<string, bool>? also = null)
    {
        this.table = table;
        HashSet<string> seen = [];
        for (int i = 0; i < table.Header.Count; i++)
        {
            Cell head = table.Header[i];
            if (!seen.Add(head.Text))
            {
                table.Fault(head.At, $"column {MessageText.Quote(head.Text)} stands twice");
            }
            else if (!known.Contains(head.Text) && also?.Invoke(head.Text) != true)
            {
                Add(head, i, known, names);
            }
        }
    }

    /// <summary>What was measured in a row.</summary>
    public ImmutableArray<FieldMeasurement> Read(IReadOnlyList<Cell> row)
    {
        var measured = ImmutableArray.CreateBuilder<FieldMeasurement>();
        var cells = new CellReader(table);
        foreach ((EvidenceNames.Target target, int column, int accuracy) in columns.Where(c => row[c.Value].Text.Length > 0))
        {
            if (target.IsChoice)
            {
                if (StateOf(target, row[column].Text) is double state)
                {
                    measured.Add(new FieldMeasurement(target.Name, state, 0));
                }
                else
                {
                    table.Fault(row[column].At, $"{target.Name} must be {target.States}, not {MessageText.Quote(row[column].Text)}");
                }
            }
            else if (cells.Number(row, column, target.Quantity?.Domain ?? Domain.Fraction) is double value)
            {
                measured.Add(new FieldMeasurement(target.Name, value, cells.Number(row, accuracy, Domain.Positive) ?? 0));
            }
        }

        return measured.ToImmutable();
    }

    private void Add(Cell head, int column, IReadOnlyList<string> known, EvidenceNames names)
    {
        if (head.Text.EndsWith(AccuracySuffix, StringComparison.Ordinal))
        {
            string of = head.Text[..^AccuracySuffix.Length];
            if (table.Find(of) < 0)
            {
                table.Fault(head.At, $"{MessageText.Quote(head.Text)} is the accuracy of a column {MessageText.Quote(of)}, which is not there");
            }

            return;
        }

        if (names.Known(head.Text, out string? fault) is not { } target)
        {
            table.Fault(head.At, fault! + (fault!.StartsWith("there is", StringComparison.Ordinal)
                ? $"; a column is an input's name or one of {string.Join(", ", known)}" : ""));
        }
        else if (target.Quantity == Quantities.MinerSum || target.Quantity == Quantities.LifeScatter
            || target.Quantity == Quantities.SectionLifeScatter)
        {
            table.Fault(head.At, $"{target.Name} shows only in the life; it cannot be measured");
        }
        else if (target.Quantity is null && !target.IsChoice)
        {
            table.Fault(head.At, $"{target.Name} is a share of an uncertain road mix, which cannot be measured on a vehicle yet");
        }
        else
        {
            columns.Add((target, column, table.Find(head.Text + AccuracySuffix)));
        }
    }

    private static double? StateOf(EvidenceNames.Target target, string text) =>
        target.Words.Contains(text) ? target.Words.IndexOf(text)
        : double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
            && target.Numbers.Contains(number) ? number
        : null;
}
