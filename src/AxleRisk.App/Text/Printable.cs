using System.Globalization;
using System.Text;

namespace AxleRisk.App.Text;

/// <summary>Makes a scenario's own words safe to print: control characters, and with them terminal escape sequences, become
/// spaces, and so do
/// the invisible ones that turn the direction of writing.</summary>
internal static class Printable
{
    public static string Line(string text)
    {
        var safe = new StringBuilder(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            safe.Append(Rune.IsControl(rune) || Rune.GetUnicodeCategory(rune) == UnicodeCategory.Format ? " " : rune.ToString());
        }

        return safe.ToString().Trim();
    }

    /// <summary>A text as the beginning of a sentence.</summary>
    public static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
