using System.Reflection;
using AxleRisk.Files;

namespace AxleRisk.App.Screens.Shell;

/// <summary>A scenario that comes inside the program, to be copied.</summary>
/// <param name="Name">Its file name.</param>
/// <param name="Title">Its title.</param>
/// <param name="Text">Its text.</param>
internal sealed record ShippedScenario(string Name, string Title, string Text)
{
    private const string Folder = "scenarios/";

    /// <summary>Every one, by name.</summary>
    public static IReadOnlyList<ShippedScenario> All { get; } =
    [
        .. Assembly.GetExecutingAssembly().GetManifestResourceNames()
            .Where(n => n.StartsWith(Folder, StringComparison.Ordinal)).Order(StringComparer.Ordinal).Select(Read),
    ];

    private static ShippedScenario Read(string resource)
    {
        using var reader = new StreamReader(Assembly.GetExecutingAssembly().GetManifestResourceStream(resource)!);
        string name = resource[Folder.Length..];
        string text = reader.ReadToEnd();
        return new ShippedScenario(name, ScenarioReader.Parse(text, name).Scenario.Title, text);
    }
}
