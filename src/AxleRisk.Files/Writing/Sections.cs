using AxleRisk.Files.Format;

namespace AxleRisk.Files.Writing;

/// <summary>
/// The order in which new sections and keys are written: that of <see cref="ScenarioFormat"/>. What is not described there comes
/// last; nothing else depends on it.
/// </summary>
internal static class Sections
{
    private static readonly List<TableFormat> InOrder = [.. ScenarioFormat.All];

    /// <summary>The place of a section among the sections; a section inside another has the other's.</summary>
    public static int Rank(string section) =>
        InOrder.FindIndex(t => t.Path == section) is > 0 and int rank ? rank
        : section.LastIndexOf('.') is > 0 and int dot ? Rank(section[..dot])
        : int.MaxValue;

    /// <summary>The place of a key in its section.</summary>
    public static int Rank(string section, string key) =>
        InOrder.Find(t => t.Path == section)?.Keys.ToList().FindIndex(k => k.Key == key) is >= 0 and int rank ? rank : int.MaxValue;
}
