using AxleRisk.Files;

namespace AxleRisk.App.Screens.Shell;

/// <summary>A scenario file found, with its title or what is wrong with it.</summary>
/// <param name="Path">The file.</param>
/// <param name="Title">Its title; null where it cannot be read.</param>
/// <param name="Error">The first thing that is wrong with it; null where it can be read.</param>
internal sealed record ScenarioEntry(string Path, string? Title, string? Error);

/// <summary>Looks for scenarios to open.</summary>
internal static class ScenarioFolder
{
    /// <summary>The most files listed: a folder full of other TOML files must not hold up the start.</summary>
    private const int Most = 200;

    /// <summary>The files <c>*.toml</c> in a folder, that of this process, and in the folder <c>scenarios</c> below it, by name.</summary>
    public static IReadOnlyList<ScenarioEntry> Find(string folder) =>
    [
        .. new[] { folder, Path.Combine(folder, "scenarios") }.SelectMany(Files).Take(Most)
            .Select(f => Entry(Path.GetRelativePath(folder, f))),
    ];

    private static IEnumerable<string> Files(string folder)
    {
        try
        {
            return Directory.Exists(folder) ? Directory.GetFiles(folder, "*.toml").Order(StringComparer.Ordinal) : [];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    private static ScenarioEntry Entry(string path)
    {
        try
        {
            return new ScenarioEntry(path, ScenarioReader.ReadFile(path).Scenario.Title, null);
        }
        catch (ScenarioException e)
        {
            return new ScenarioEntry(path, null, e.Errors[0].Message);
        }
    }
}
