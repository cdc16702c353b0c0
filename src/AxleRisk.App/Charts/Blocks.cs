namespace AxleRisk.App.Charts;

/// <summary>Bars of block characters, to an eighth of a cell.</summary>
internal static class Blocks
{
    private const string Across = " ▏▎▍▌▋▊▉█";
    private const string Up = " ▁▂▃▄▅▆▇█";

    /// <summary>Draws a bar to the right.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="x">Its first cell.</param>
    /// <param name="y">Its row.</param>
    /// <param name="length">Its length in cells, not below 0.</param>
    /// <param name="role">Its role.</param>
    public static void Right(Picture picture, int x, int y, double length, ChartRole role)
    {
        int eighths = Eighths(length);
        for (; eighths > 0; eighths -= 8)
        {
            picture.Put(x++, y, Across[Math.Min(8, eighths)], role);
        }
    }

    /// <summary>Draws a bar upward from a row.</summary>
    public static void Upward(Picture picture, int x, int bottom, double length, ChartRole role)
    {
        int eighths = Eighths(length);
        for (; eighths > 0; eighths -= 8)
        {
            picture.Put(x, bottom--, Up[Math.Min(8, eighths)], role);
        }
    }

    // What is there, however small, is seen.
    private static int Eighths(double length) => length > 0 ? Math.Max(1, (int)Math.Round(8 * Math.Min(length, 10_000))) : 0;
}
