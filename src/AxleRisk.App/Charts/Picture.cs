using System.Text;
using AxleRisk.App.Text;

namespace AxleRisk.App.Charts;

/// <summary>A picture of cells, row 0 at the top. What is put outside of it is left out.</summary>
internal sealed class Picture
{
    private readonly ChartCell[] cells;

    public Picture(int width, int height)
    {
        (Width, Height) = (Math.Max(0, width), Math.Max(0, height));
        cells = new ChartCell[Width * Height];
        Array.Fill(cells, ChartCell.Empty);
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>A cell inside the picture.</summary>
    public ChartCell this[int x, int y] => cells[(y * Width) + x];

    /// <summary>The character of a cell as the terminal can show it.</summary>
    public char Shown(int x, int y) => this[x, y] is var cell && !Characters.ArePlain ? cell.Glyph
        : (cell.Glyph is > '\u2800' and <= '\u28FF' or '─' or '╌' or '·' ? PlainOf(cell.Role) : null) ?? Characters.Plain(cell.Glyph);

    /// <summary>Puts a character.</summary>
    public void Put(int x, int y, char glyph, ChartRole role)
    {
        if (x >= 0 && x < Width && y >= 0 && y < Height)
        {
            cells[(y * Width) + x] = new ChartCell(glyph, role);
        }
    }

    /// <summary>Puts a text to the right of a place.</summary>
    public void Text(int x, int y, string text, ChartRole role = ChartRole.Text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            Put(x + i, y, text[i], role);
        }
    }

    /// <summary>A picture that holds one line of text in its middle: there is nothing to draw, or no room.</summary>
    public static Picture Saying(int width, int height, string text)
    {
        var picture = new Picture(width, height);
        string cut = text.Length <= width ? text : text[..Math.Max(0, width)];
        picture.Text((picture.Width - cut.Length) / 2, picture.Height / 2, cut);
        return picture;
    }

    /// <summary>The rows as text, without blanks at their ends.</summary>
    public IEnumerable<string> Lines()
    {
        for (int y = 0; y < Height; y++)
        {
            var line = new StringBuilder(Width);
            for (int x = 0; x < Width; x++)
            {
                line.Append(Shown(x, y));
            }

            yield return line.ToString().TrimEnd();
        }
    }

    /// <summary>What a line is drawn with where it has no dots, in the picture and in its legend; null for what is none.</summary>
    private static char? PlainOf(ChartRole role) => role switch
    {
        ChartRole.Line => '*',
        ChartRole.SecondLine => '+',
        ChartRole.ThirdLine => 'x',
        ChartRole.Band => '.',
        _ => null,
    };

    /// <inheritdoc/>
    public override string ToString() => string.Join('\n', Lines());
}
