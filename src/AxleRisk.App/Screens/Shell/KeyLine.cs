using AxleRisk.App.Screens.Pages;

namespace AxleRisk.App.Screens.Shell;

/// <summary>The bottom line: the keys that work now, as many as fit.</summary>
internal static class KeyLine
{
    private const string Gap = "  ";

    public static PageLine Of(IEnumerable<KeyHint> hints, int width)
    {
        var pieces = new List<Piece>();
        int used = 1;
        pieces.Add(new Piece(" ", Ink.Bar));
        foreach (KeyHint hint in hints)
        {
            int length = hint.Key.Length + 1 + hint.Does.Length + Gap.Length;
            if (used + length - Gap.Length > width)
            {
                break;
            }

            pieces.Add(new Piece(hint.Key, Ink.Chosen));
            pieces.Add(new Piece($" {hint.Does}{Gap}", Ink.Bar));
            used += length;
        }

        return PageLine.Of([.. pieces]).Fit(width, Ink.Bar);
    }
}
