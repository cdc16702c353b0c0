using System.Globalization;
using System.Text;

namespace AxleRisk.Reports.Rendering;

/// <summary>
/// Makes any text fit to stand in a document: what steers a terminal, turns the direction of writing or is no character at
/// all becomes a space, so that a scenario's words show what they are.
/// </summary>
internal static class SafeText
{
    public static string Of(string text)
    {
        var safe = new StringBuilder(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            safe.Append(IsFit(rune) ? rune.ToString() : " ");
        }

        return safe.ToString();
    }

    /// <summary>The same where lines are broken for the reader: a percent sign stays with its number.</summary>
    public static string Flowing(string text) => Of(text).Replace(" %", "\u00a0%", StringComparison.Ordinal);

    private static bool IsFit(Rune rune) =>
        !Rune.IsControl(rune)
        && Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Format or UnicodeCategory.LineSeparator
            or UnicodeCategory.ParagraphSeparator)
        && (rune.Value & 0xFFFE) != 0xFFFE;
}
