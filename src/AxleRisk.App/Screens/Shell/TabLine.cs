using AxleRisk.App.Screens.Pages;

namespace AxleRisk.App.Screens.Shell;

/// <summary>The tabs: each page's key and name, as long as the window allows.</summary>
internal static class TabLine
{
    /// <summary>The tabs from left to right with the column each begins at.</summary>
    /// <param name="pages">The pages.</param>
    /// <param name="width">The columns there are.</param>
    /// <param name="front">The page in front, whose name is shown before that of any other.</param>
    public static IReadOnlyList<(int Column, string Text)> Tabs(IReadOnlyList<Page> pages, int width, Page? front)
    {
        string[] full = [.. pages.Select((p, i) => $" {PageBook.Keys[i]} {p.Name} ")];
        string[] tight = [.. pages.Select((p, i) => $"{PageBook.Keys[i]} {p.Name} ")];
        string[] narrow = [.. pages.Select((p, i) => $"{PageBook.Keys[i]} {p.ShortName} ")];
        string[] sparing = [.. pages.Select((p, i) => p.IsAsked ? narrow[i] : $"{PageBook.Keys[i]} ")];
        string[] chosen = new[] { full, tight, narrow, sparing }.FirstOrDefault(t => t.Sum(x => x.Length) <= width + 1)
            ?? Named(pages, narrow, width, front);
        var tabs = new List<(int, string)>();
        int column = 0;
        foreach (string tab in chosen)
        {
            tabs.Add((column, tab));
            column += tab.Length;
        }

        return tabs;
    }

    // The keys of all pages, and the names of as many as there is room for: the one in front, then those that the scenario asks, in order.
    private static string[] Named(IReadOnlyList<Page> pages, string[] narrow, int width, Page? front)
    {
        string[] tabs = [.. pages.Select((_, i) => $"{PageBook.Keys[i]} ")];
        foreach (int i in Enumerable.Range(0, pages.Count).Where(i => pages[i] == front || pages[i].IsAsked)
            .OrderByDescending(i => pages[i] == front))
        {
            if (tabs.Sum(t => t.Length) - tabs[i].Length + narrow[i].Length <= width + 1)
            {
                tabs[i] = narrow[i];
            }
        }

        return tabs;
    }

    /// <summary>The line; the page in front is marked by a sign as well as by its ink.</summary>
    public static PageLine Line(IReadOnlyList<Page> pages, Page? front, int width) => PageLine.Of(
        [.. Tabs(pages, width, front)
            .Select((t, i) => pages[i] == front ? new Piece(Marked(t.Text, PageBook.Keys[i]), Ink.Chosen) : new Piece(t.Text, Ink.Bar))])
        .Fit(width, Ink.Bar);

    /// <summary>The index of the page whose tab is at a column; null where there is none.</summary>
    public static int? At(IReadOnlyList<Page> pages, int width, Page? front, int column) =>
        Tabs(pages, width, front).Select((t, i) => (t, i)).Where(x => column >= x.t.Column && column < x.t.Column + x.t.Text.Length)
            .Select(x => (int?)x.i).FirstOrDefault();

    private static string Marked(string tab, char key) => tab.Replace($"{key} ", $"{key}>");
}
