using AxleRisk.App.Screens.Pages;

namespace AxleRisk.App.Screens.Shell;

/// <summary>The bottom line: the keys that work now. Where not all fit, those are left out that would be missed least.</summary>
internal static class KeyLine
{
    private const string Gap = "  ";

    /// <summary>The line.</summary>
    /// <param name="hints">The keys in the order they are shown; of one worth the most useful first.</param>
    /// <param name="width">The room, in characters.</param>
    public static PageLine Of(IEnumerable<KeyHint> hints, int width)
    {
        KeyHint[] all = [.. hints];
        bool[] isShown = Fitting(all, width);
        IEnumerable<Piece> keys = all.Where((_, i) => isShown[i])
            .SelectMany(hint => new[] { new Piece(hint.Key, Ink.Chosen), new Piece($" {hint.Does}{Gap}", Ink.Bar) });
        return PageLine.Of([new Piece(" ", Ink.Bar), .. keys]).Fit(width, Ink.Bar);
    }

    /// <summary>Which are shown: by their worth, each that fits beside those before it.</summary>
    private static bool[] Fitting(KeyHint[] hints, int width)
    {
        var isShown = new bool[hints.Length];
        int used = 1;
        foreach (int i in Enumerable.Range(0, hints.Length).OrderBy(i => hints[i].Worth))
        {
            // The last one needs no gap, whichever that will be.
            int length = hints[i].Key.Length + 1 + hints[i].Does.Length + Gap.Length;
            if (used + length - Gap.Length <= width)
            {
                isShown[i] = true;
                used += length;
            }
        }

        return isShown;
    }
}
