using System.Text;

namespace AxleRisk.App.Text;

/// <summary>Makes a scenario's own words safe to print: control characters, and with them terminal escape sequences, become spaces.</summary>
internal static class Printable
{
    public static string Line(string text)
    {
        var safe = new StringBuilder(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            safe.Append(Rune.IsControl(rune) ? " " : rune.ToString());
        }

        return safe.ToString().Trim();
    }
}
