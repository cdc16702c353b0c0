namespace AxleRisk.App.Text;

/// <summary>Emphasis on a terminal; plain text elsewhere. Nothing is told by emphasis alone.</summary>
internal static class Style
{
    /// <summary>Whether headings and warnings are set bold; decided once, when the program starts.</summary>
    public static bool IsOn { get; set; }

    /// <summary>A line as it is printed.</summary>
    public static string Print(TextLine line) => IsOn && line.Kind != LineKind.Plain ? $"\u001b[1m{line.Text}\u001b[0m" : line.Text;
}
