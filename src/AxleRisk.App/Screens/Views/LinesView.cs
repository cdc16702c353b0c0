using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Text;
using Terminal.Gui.ViewBase;

namespace AxleRisk.App.Screens.Views;

/// <summary>Draws lines for the size it has.</summary>
/// <param name="lines">The lines for a width and a height.</param>
internal sealed class LinesView(Func<int, int, IReadOnlyList<PageLine>> lines) : View
{
    /// <inheritdoc/>
    protected override bool OnDrawingContent(DrawContext? context)
    {
        int height = Viewport.Height;
        IReadOnlyList<PageLine> drawn = Viewport.Width > 0 && height > 0 ? lines(Viewport.Width, height) : [];
        for (int y = 0; y < height; y++)
        {
            Draw(this, y, (y < drawn.Count ? drawn[y] : PageLine.Empty).Fit(Viewport.Width));
        }

        return true;
    }

    /// <summary>Draws one line of a view.</summary>
    public static void Draw(View view, int y, PageLine line)
    {
        int x = 0;
        foreach (Piece piece in line.Pieces)
        {
            view.SetAttribute(Look.Of(piece.Ink));
            view.AddStr(x, y, Characters.Of(piece.Text));
            x += piece.Text.Length;
        }
    }
}
