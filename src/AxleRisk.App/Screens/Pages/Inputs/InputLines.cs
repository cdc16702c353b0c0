using System.Globalization;
using System.Text.RegularExpressions;
using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Screens.Pages.Inputs;

/// <summary>The list of inputs as lines: a heading a group, a line an input.</summary>
internal static partial class InputLines
{
    private const int LabelWidth = 26;
    private const int UnitWidth = 9;
    private const int MarkWidth = 8;
    private const int KeyWidth = 28;

    /// <summary>From this width on each input's key within its group has a column; in full it stands below with the chosen one.</summary>
    private const int WideEnough = 110;

    /// <summary>The lines.</summary>
    /// <param name="groups">The inputs.</param>
    /// <param name="chosen">The place of the chosen one among all.</param>
    /// <param name="width">Characters a line.</param>
    /// <param name="line">The line of the chosen one.</param>
    public static IReadOnlyList<PageLine> Of(IReadOnlyList<InputGroup> groups, int chosen, int width, out int line)
    {
        var lines = new List<PageLine>();
        int place = 0;
        line = 0;
        foreach (InputGroup group in groups)
        {
            lines.Add(PageLine.Of(group.Title, Ink.Heading));
            foreach (InputRow row in group.Rows)
            {
                line = place == chosen ? lines.Count : line;
                lines.Add(Row(row, place == chosen, width));
                place++;
            }
        }

        return lines;
    }

    /// <summary>The place of the input on a line; null where there is a heading or nothing.</summary>
    public static int? RowAt(IReadOnlyList<InputGroup> groups, int line)
    {
        int at = 0;
        int place = 0;
        foreach (InputGroup group in groups)
        {
            if (line <= at + group.Rows.Count)
            {
                return line == at ? null : place + line - at - 1;
            }

            at += 1 + group.Rows.Count;
            place += group.Rows.Count;
        }

        return null;
    }

    /// <summary>
    /// A distribution in fewer characters: <c>normal(7, sd 0.05013, 6.8..7.2)</c>. The list is narrow, and each of these matters; all
    /// digits stand below it.
    /// </summary>
    public static string Dense(string distribution) =>
        LongNumbers().Replace(
            Limits().Replace(distribution, "$1..$2").Replace("(mean ", "(", StringComparison.Ordinal),
            m => double.Parse(m.Value, CultureInfo.InvariantCulture).ToString("G4", CultureInfo.InvariantCulture));

    [GeneratedRegex(@"\d+\.\d{5,}")]
    private static partial Regex LongNumbers();

    [GeneratedRegex(@"(?:min|low) ([^\s,()]+), (?:max|high) ([^\s,()]+)")]
    private static partial Regex Limits();

    private static PageLine Row(InputRow row, bool isChosen, int width)
    {
        int keyWidth = width >= WideEnough ? KeyWidth : 0;
        int valueWidth = Math.Max(8, width - 2 - LabelWidth - 1 - keyWidth - UnitWidth - MarkWidth - 1);
        string name = row.Kind == InputKind.Element ? "" : row.Name[(row.Name.LastIndexOf('.') + 1)..];
        string key = keyWidth == 0 ? "" : TextTable.Shorten(name, keyWidth - 1).PadRight(keyWidth);
        string mark = row.Factor is { } knowledge ? knowledge == Knowledge.Unknown ? "unknown" : "varies" : row.IsStated ? "" : "default";
        string label = TextTable.Shorten(Printable.Line(row.Label), LabelWidth).PadRight(LabelWidth);

        string value = TextTable.Shorten([row.ValueText.Length <= valueWidth ? row.ValueText : Dense(row.ValueText)], valueWidth)[0]
            .PadRight(valueWidth);
        Ink quiet = row.IsStated ? Ink.Plain : Ink.Quiet;
        PageLine line = PageLine.Of(
            new Piece(isChosen ? "> " : "  "), new Piece(label + " ", quiet), new Piece(key, Ink.Quiet),
            new Piece(value, row.Factor is null ? quiet : Ink.Strong), new Piece(" " + row.Unit.PadRight(UnitWidth), Ink.Quiet),
                new Piece(!row.IsStated && mark != "default" ? mark + "*" : mark, Ink.Quiet));
        return isChosen ? line.Fit(width).In(Ink.Chosen) : line;
    }
}
