using AxleRisk.App.Screens.Pages;

namespace AxleRisk.App.Screens.Shell;

/// <summary>The tabs: each page's key and name, as long as the window allows.</summary>
internal static class TabLine
{
    /// <summary>The tabs from left to right with the column each begins at.</summary>
    public static IReadOnlyList<(int Column, string Text)> Tabs(IReadOnlyList<Page> pages, int width)
    {
        string[] full = [.. pages.Select((p, i) => $" {PageBook.Keys[i]} {p.Name} ")];
        string[] tight = [.. pages.Select((p, i) => $"{PageBook.Keys[i]} {p.Name} ")];
        string[] narrow = [.. pages.Select((p, i) => $"{PageBook.Keys[i]} {p.ShortName} ")];
        string[] sparing = [.. pages.Select((p, i) => p.IsAsked ? narrow[i] : $"{PageBook.Keys[i]} ")];
        string[] keys = [.. pages.Select((_, i) => $"{PageBook.Keys[i]} ")];
        string[] chosen = new[] { full, tight, narrow, sparing }.FirstOrDefault(t => t.Sum(x => x.Length) <= width + 1) ?? keys;
        var tabs = new List<(int, string)>();
        int column = 0;
        foreach (string tab in chosen)
        {
            tabs.Add((column, tab));
            column += tab.Length;
        }

        return tabs;
    }

    /// <summary>The line; the page in front is marked by a sign as well as by its ink.</summary>
    public static PageLine Line(IReadOnlyList<Page> pages, Page? front, int width) => PageLine.Of(
        [.. Tabs(pages, width)
            .Select((t, i) => pages[i] == front ? new Piece(Marked(t.Text, PageBook.Keys[i]), Ink.Chosen) : new Piece(t.Text, Ink.Bar))])
        .Fit(width, Ink.Bar);

    /// <summary>The index of the page whose tab is at a column; null where there is none.</summary>
    public static int? At(IReadOnlyList<Page> pages, int width, int column) =>
        Tabs(pages, width).Select((t, i) => (t, i)).Where(x => column >= x.t.Column && column < x.t.Column + x.t.Text.Length)
            .Select(x => (int?)x.i).FirstOrDefault();

    private static string Marked(string tab, char key) => tab.Replace($"{key} ", $"{key}>");
}
