namespace AxleRisk.App.Screens.Pages;

/// <summary>Which part of a page longer than the window is shown.</summary>
internal sealed class Scroll
{
    /// <summary>The first line shown.</summary>
    public int Top { get; private set; }

    /// <summary>Moves by a key.</summary>
    /// <returns>Whether the key scrolls.</returns>
    public bool Press(PageKey key, int height)
    {
        switch (key.Name)
        {
            case KeyName.Up:
                Top--;
                return true;
            case KeyName.Down:
                Top++;
                return true;
            case KeyName.PageUp:
                Top -= Math.Max(1, height - 2);
                return true;
            case KeyName.PageDown:
                Top += Math.Max(1, height - 2);
                return true;
            case KeyName.Home:
                Top = 0;
                return true;
            case KeyName.End:
                Top = int.MaxValue / 2;
                return true;
            default:
                return false;
        }
    }

    /// <summary>Moves by lines, for the mouse wheel.</summary>
    public void By(int lines) => Top += lines;

    /// <summary>Keeps the view inside the page and, if given, a line in sight.</summary>
    public void Keep(int lines, int height, int? inSight)
    {
        if (inSight is { } line)
        {
            Top = Math.Clamp(Top, line - height + 1, line);

            // The heading above the first rows comes back with them.
            Top = line < height - 1 ? 0 : Top;
        }

        Top = Math.Clamp(Top, 0, Math.Max(0, lines - height));
    }
}
