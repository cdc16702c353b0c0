using System.Collections.Immutable;

namespace AxleRisk.Core.Scenarios;

/// <summary>
/// A further checked section of the same axle, such as the spring seat, the flange weld or the centre case. It shares ride and road with
/// the first, which the table of the axle states; its own inputs are among <see cref="Scenario.Inputs"/>, by its name.
/// </summary>
/// <param name="Name">A short name, unique in the scenario.</param>
/// <param name="Shape">The shape of the section.</param>
/// <param name="Detail">Its weld detail.</param>
public sealed record CheckedSection(string Name, SectionShape Shape, Detail Detail)
{
    /// <summary>The table of the scenario file; what the names of its inputs begin with.</summary>
    public const string Table = "sections";

    /// <summary>What stands for the first checked section where sections are named.</summary>
    public const string First = "axle";

    /// <summary>The name of one of its inputs: <c>sections.seat.wall_mm</c>.</summary>
    public string NameOf(string key) => $"{Table}.{Name}.{key}";

    /// <summary>The names of the choices among words of its detail.</summary>
    public ImmutableArray<string> WordNames => [.. Change.WordNames.Select(OwnName)];

    /// <summary>The name of the same choice of the first section's detail.</summary>
    public static string FirstName(string word) => "detail" + word[word.LastIndexOf('.')..];

    private string OwnName(string first) => NameOf(first[(first.LastIndexOf('.') + 1)..]);
}
