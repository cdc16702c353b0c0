using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Text;

namespace AxleRisk.App.Screens.Shell;

/// <summary>The explanation of a page, with the keys of the frame below it.</summary>
internal static class HelpText
{
    private static readonly KeyHint[] FrameKeys =
    [
        new("1 2 3 ...", "the pages, as on the tabs; or click a tab"), new("arrows", "scroll, or move in a list; PgUp PgDn Home End too"),
        new("o", "open another scenario"), new("Ctrl+S", "save"), new("S", "save under another name"),
        new("R", "what differs from the file; read it again"), new("b", "pin the scenario: each change is then told against it; b again lets go"),
        new("Ctrl+Z Ctrl+Y", "take the last edit back, do it again"),
        new("? or F1", "this explanation; any key leaves it"), new("q", "quit"),
    ];

    public static IReadOnlyList<PageLine> Of(Page page, int width)
    {
        int room = Math.Min(width, Layout.Width) - 2;
        return
        [
            PageLine.Of(page.Name, Ink.Heading), PageLine.Empty,
            .. page.Explanation.SelectMany(p => Wrap.Lines(p, room, "").Select(l => PageLine.Of("  " + l)).Append(PageLine.Empty)),
            PageLine.Of("Keys", Ink.Heading),
            .. page.Keys.Concat(FrameKeys).Select(k => PageLine.Of(new Piece($"  {k.Key,-14}", Ink.Strong), new Piece(k.Does))),
            PageLine.Empty,
            .. Wrap.Lines(Caution.Sentence, room, "").Select(l => PageLine.Of("  " + l, Ink.Quiet)),
        ];
    }
}
