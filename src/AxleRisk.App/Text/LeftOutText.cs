namespace AxleRisk.App.Text;

/// <summary>What is said where a section of a report was not made.</summary>
internal static class LeftOutText
{
    /// <summary>In the section's place.</summary>
    /// <param name="reason">Why, as the end of a sentence.</param>
    public static string InSection(string reason) => $"This section was not made: {Ended(reason)}";

    /// <summary>In the summary, which may be all that is read.</summary>
    /// <param name="title">The heading of the section.</param>
    public static string InSummary(string title) => $"The section \"{title}\" was not made; it says why in its place.";

    /// <summary>Where the writing of the report is told of.</summary>
    /// <param name="title">The heading of the section.</param>
    /// <param name="reason">Why, as the end of a sentence.</param>
    public static string Told(string title, string reason) => $"NOT MADE: the section \"{title}\": {Ended(reason)}";

    private static string Ended(string reason) => Printable.Line(reason).TrimEnd('.') + ".";
}
