using AxleRisk.App.Charts;

namespace AxleRisk.App.Screens.Pages;

/// <summary>Pictures as lines of a page.</summary>
internal static class Pictures
{
    /// <summary>The rows of a picture, each run of one role a piece.</summary>
    public static IReadOnlyList<PageLine> Lines(Picture picture)
    {
        var lines = new List<PageLine>();
        for (int y = 0; y < picture.Height; y++)
        {
            var pieces = new List<Piece>();
            for (int x = 0; x < picture.Width; x++)
            {
                ChartCell cell = picture[x, y];
                Ink ink = Of(cell.Role);
                if (pieces.Count > 0 && pieces[^1].Ink == ink)
                {
                    pieces[^1] = new Piece(pieces[^1].Text + picture.Shown(x, y), ink);
                }
                else
                {
                    pieces.Add(new Piece(picture.Shown(x, y).ToString(), ink));
                }
            }

            lines.Add(PageLine.Of([.. pieces]));
        }

        return lines;
    }

    private static Ink Of(ChartRole role) => role switch
    {
        ChartRole.Line or ChartRole.Strong => Ink.Strong,
        ChartRole.SecondLine or ChartRole.Mark => Ink.Mark,
        ChartRole.ThirdLine => Ink.Warning,
        ChartRole.Chosen => Ink.Chosen,
        ChartRole.Blank or ChartRole.Text => Ink.Plain,
        _ => Ink.Quiet,
    };
}
