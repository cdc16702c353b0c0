using AxleRisk.App.Screens.Live;
using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Screens.Pages.Inputs;

/// <summary>The rank correlations between the continuous factors as a small matrix.</summary>
internal sealed class CorrelationPanel(Session session, InputEditor editor) : Panel
{
    private const int CellWidth = 6;

    private int row = 1;
    private int column;

    public override IReadOnlyList<KeyHint> Keys => [new("arrows", "pair"), new("Enter", "set"), new("Esc", "back")];

    public override string Status => Factors.Length < 2
        ? "Fewer than two continuous factors: there is nothing to correlate."
        : $"{Factors[row].Label} with {Factors[column].Label}: {Words(Of(row, column))}";

    private ScalarFactor[] Factors => [.. session.Model.Factors.Factors.OfType<ScalarFactor>().Where(f => f.Distribution.IsContinuous)];

    public override IReadOnlyList<PageLine> Lines(int width, int height)
    {
        ScalarFactor[] factors = Factors;
        if (factors.Length < 2)
        {
            return [PageLine.Empty, PageLine.Of("  Give two inputs a continuous distribution first.")];
        }

        (row, column) = (Math.Clamp(row, 1, factors.Length - 1), Math.Clamp(column, 0, factors.Length - 2));
        int nameWidth = Math.Min(34, factors.Max(f => f.Label.Length) + 4);
        string[] names = TextTable.Shorten([.. factors.Select(f => f.Label)], nameWidth - 4);
        int columns = Math.Max(1, Math.Min(factors.Length - 1, (width - nameWidth) / CellWidth));
        int rows = Math.Max(1, height - 2);
        int left = Math.Clamp(column - columns + 1, 0, factors.Length - 1);
        int top = Math.Clamp(row - rows + 1, 1, factors.Length);
        string head = string.Concat(Enumerable.Range(left, columns).Select(c => $"{c + 1,CellWidth}"));
        return
        [
            PageLine.Of("Rank correlations (Spearman); the columns are numbered like the rows", Ink.Heading),
            PageLine.Of(new string(' ', nameWidth) + head, Ink.Quiet),
            PageLine.Of(Name(0, names[0], nameWidth)),
            .. Enumerable.Range(top, Math.Min(rows - 1, factors.Length - top)).Select(r => PageLine.Of(
                [new Piece(Name(r, names[r], nameWidth)), .. Enumerable.Range(left, columns).Where(c => c < r)
                    .Select(c => Cell(r, c))])),
        ];
    }

    public override PanelAnswer Press(PageKey key)
    {
        int most = Factors.Length - 1;
        switch (key.Name)
        {
            case KeyName.Escape:
                return new(true, IsDone: true);
            case KeyName.Up or KeyName.Down or KeyName.Left or KeyName.Right when most > 0:
                row = Math.Clamp(row + (key.Name == KeyName.Down ? 1 : key.Name == KeyName.Up ? -1 : 0), 1, most);
                column = Math.Clamp(column + (key.Name == KeyName.Right ? 1 : key.Name == KeyName.Left ? -1 : 0), 0, row - 1);
                return new(true);
            case KeyName.Enter when most > 0:
                return new(true, false, editor.Correlate(Factors[row], Factors[column], Of(row, column)));
            default:
                return new(false);
        }
    }

    private static string Name(int place, string name, int width) => $"{place + 1,3} {name}".PadRight(width);

    private static string Words(double spearman) => spearman == 0 ? "independent" : $"{spearman:0.##}";

    private Piece Cell(int r, int c)
    {
        double spearman = Of(r, c);
        bool isChosen = (r, c) == (row, column);
        string text = spearman == 0 ? "." : spearman.ToString("0.##");
        return new Piece(isChosen ? $"[{text}]".PadLeft(CellWidth) : $"{text} ".PadLeft(CellWidth),
            isChosen ? Ink.Chosen : spearman == 0 ? Ink.Quiet : Ink.Strong);
    }

    private double Of(int r, int c)
    {
        ScalarFactor[] factors = Factors;
        return session.Document.Scenario.Correlations
            .FirstOrDefault(x => (x.First, x.Second) == (factors[r].Name, factors[c].Name)
                || (x.First, x.Second) == (factors[c].Name, factors[r].Name))?.Spearman ?? 0;
    }
}
