namespace AxleRisk.App.Charts;

/// <summary>How a line is dashed, so that series differ without colour.</summary>
internal enum Dash
{
    /// <summary>A full line.</summary>
    Solid,

    /// <summary>Long strokes.</summary>
    Dashed,

    /// <summary>Single dots.</summary>
    Dotted,
}

/// <summary>Dots, two by four in a cell, as the Braille patterns of Unicode (U+2800 to U+28FF). Dot row 0 is at the top.</summary>
internal sealed class BrailleCanvas(int columns, int rows)
{
    // The bits of the dots of a cell by row and column (Unicode 16.0, chapter 21.1).
    private static readonly byte[] Bits = [0x01, 0x08, 0x02, 0x10, 0x04, 0x20, 0x40, 0x80];

    private readonly byte[] dots = new byte[columns * rows];
    private readonly ChartRole[] roles = new ChartRole[columns * rows];

    /// <summary>Dots across.</summary>
    public int Width => 2 * columns;

    /// <summary>Dots down.</summary>
    public int Height => 4 * rows;

    /// <summary>Sets a dot. A band gives way to a line in the same cell.</summary>
    public void Set(int x, int y, ChartRole role)
    {
        if (x < 0 || x >= Width || y < 0 || y >= Height)
        {
            return;
        }

        int cell = (y / 4 * columns) + (x / 2);
        if (role == ChartRole.Band && roles[cell] is not (ChartRole.Blank or ChartRole.Band))
        {
            return;
        }

        if (roles[cell] == ChartRole.Band && role != ChartRole.Band)
        {
            dots[cell] = 0;
        }

        dots[cell] |= Bits[(y % 4 * 2) + (x % 2)];
        roles[cell] = role;
    }

    /// <summary>Draws a line between two dots.</summary>
    /// <param name="from">One end.</param>
    /// <param name="to">The other.</param>
    /// <param name="role">The role.</param>
    /// <param name="dash">How it is dashed.</param>
    /// <param name="drawn">The dots drawn so far, for the dashes to go on across the pieces of one line.</param>
    public void Line((double X, double Y) from, (double X, double Y) to, ChartRole role, Dash dash, ref int drawn)
    {
        int steps = (int)Math.Clamp(Math.Ceiling(Math.Max(Math.Abs(to.X - from.X), Math.Abs(to.Y - from.Y))), 1, 10_000);
        for (int i = 0; i < steps; i++)
        {
            double t = (double)i / steps;
            if (Shows(dash, drawn++))
            {
                Set((int)Math.Round(from.X + (t * (to.X - from.X))), (int)Math.Round(from.Y + (t * (to.Y - from.Y))), role);
            }
        }

        if (Shows(dash, drawn))
        {
            Set((int)Math.Round(to.X), (int)Math.Round(to.Y), role);
        }
    }

    /// <summary>Fills a column of dots with a light texture.</summary>
    public void Shade(int x, double top, double bottom)
    {
        for (int y = (int)Math.Max(0, Math.Round(top)); y <= Math.Min(Height - 1, Math.Round(bottom)); y++)
        {
            if ((x + (2 * y)) % 4 == 0)
            {
                Set(x, y, ChartRole.Band);
            }
        }
    }

    /// <summary>Puts the cells that have dots into a picture.</summary>
    public void Put(Picture picture, int left, int top)
    {
        for (int cell = 0; cell < dots.Length; cell++)
        {
            if (dots[cell] != 0)
            {
                picture.Put(left + (cell % columns), top + (cell / columns), (char)(0x2800 + dots[cell]), roles[cell]);
            }
        }
    }

    private static bool Shows(Dash dash, int i) => dash switch
    {
        Dash.Dashed => i % 8 < 5,
        Dash.Dotted => i % 4 == 0,
        _ => true,
    };
}
