namespace AxleRisk.App.Screens.Pages;

/// <summary>
/// A list with a chosen row and what belongs to it: beside each other in a wide window, else below each other. The list
/// follows the choice; the body scrolls by its own keys, and says so where it is longer than its room.
/// </summary>
internal sealed class ListAndBody
{
    /// <summary>
    /// From this width on they stand side by side unless the list needs more: a body as wide as printed pages, and a list worth
    /// reading.
    /// </summary>
    private const int WideEnough = 116;

    private const int BodyWidth = Text.Layout.Width;
    private const int WidestList = 58;

    /// <summary>The gap between list and body.</summary>
    private const int Gap = 2;

    private readonly Scroll list = new();
    private readonly Scroll body = new();
    private int bodyHeight = 1;
    private int top;
    private int listHeight;
    private int listWidth;

    /// <summary>The width that the list needs beside the body; below it they stand below each other.</summary>
    public int LeastList { get; init; } = WideEnough - BodyWidth - Gap;

    /// <summary>The lines, as many as the window is high.</summary>
    /// <param name="rows">The list for a width.</param>
    /// <param name="chosen">The index of the row that must stay in sight.</param>
    /// <param name="bodyOf">The body for a width and a height.</param>
    /// <param name="width">Of the window.</param>
    /// <param name="height">Of the window.</param>
    /// <param name="leastBody">Rows that the body keeps below a long list.</param>
    public IReadOnlyList<PageLine> Lines(
        Func<int, IReadOnlyList<PageLine>> rows, int chosen, Func<int, int, IReadOnlyList<PageLine>> bodyOf, int width, int height,
            int leastBody)
    {
        bool isWide = width - BodyWidth - Gap >= LeastList;
        listWidth = isWide ? Math.Min(WidestList, width - BodyWidth - Gap) : width;
        IReadOnlyList<PageLine> all = rows(listWidth);
        listHeight = isWide ? height : Math.Clamp(height - leastBody - 1, Math.Min(3, height), Math.Max(3, all.Count));
        list.Keep(all.Count, listHeight, chosen);
        top = list.Top;
        PageLine[] shown = [.. Enumerable.Range(top, listHeight).Select(i => i < all.Count ? all[i] : PageLine.Empty)];
        int bodyWidth = isWide ? width - listWidth - Gap : width;
        int room = isWide ? height : height - listHeight;
        PageLine[]
            lower = [.. Body(bodyOf(bodyWidth, Math.Max(1, room - 1)), bodyWidth, room, isWide ? 0 : all.Count)];
        return isWide ? [.. PageLine.Beside(shown, listWidth + Gap, lower)] : [.. shown, .. lower];
    }

    /// <summary>Answers the keys that scroll the body.</summary>
    public bool Press(PageKey key) => key.Name is KeyName.PageUp or KeyName.PageDown or KeyName.Home or KeyName.End
        && body.Press(key, bodyHeight);

    /// <summary>Scrolls the body by the wheel.</summary>
    public void Wheel(int lines) => body.By(lines);

    /// <summary>The row of the list at a line and column of the page; null where there is none.</summary>
    public int? RowAt(int line, int column) => line >= 0 && line < listHeight && column < listWidth ? line + top : null;

    private IEnumerable<PageLine> Body(IReadOnlyList<PageLine> lines, int width, int room, int rows)
    {
        if (room < 1)
        {
            return [];
        }

        bodyHeight = Math.Max(1, room - 1);
        body.Keep(lines.Count, bodyHeight, null);
        string place = lines.Count > bodyHeight
            ? $" {body.Top + 1}-{Math.Min(lines.Count, body.Top + bodyHeight)} of {lines.Count}, PgUp PgDn " : "";
        string hidden = rows > listHeight ? $"── above: lines {top + 1}-{top + listHeight} of {rows} " : "";
        place = hidden.Length + place.Length + 2 <= width ? place : "";
        string rule = hidden + new string('─', Math.Max(0, width - hidden.Length - place.Length - 2)) + place + "──";
        return [PageLine.Of(rule, Ink.Quiet), .. lines.Skip(body.Top).Take(bodyHeight)];
    }
}
