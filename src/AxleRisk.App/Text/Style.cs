namespace AxleRisk.App.Text;

/// <summary>Emphasis on a terminal; plain text elsewhere. Nothing is told by emphasis alone.</summary>
internal static class Style
{
    /// <summary>Whether headings are set bold; decided once, when the program starts.</summary>
    public static bool IsOn { get; set; }

    public static string Heading(string text) => IsOn ? $"\u001b[1m{text}\u001b[0m" : text;
}
