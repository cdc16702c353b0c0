using System.Reflection;
using System.Text;
using AxleRisk.Files;

namespace AxleRisk.App.Screens.Shell;

/// <summary>A scenario that comes inside the program, to be copied.</summary>
/// <param name="Name">Its file name.</param>
/// <param name="Title">Its title.</param>
/// <param name="Text">Its text.</param>
/// <param name="Data">The texts of its data files by their names in it.</param>
internal sealed record ShippedScenario(string Name, string Title, string Text, IReadOnlyDictionary<string, string> Data)
{
    private const string Folder = "scenarios/";

    /// <summary>Every one, by name.</summary>
    public static IReadOnlyList<ShippedScenario> All { get; } =
        [.. Resources.Where(n => n.EndsWith(".toml", StringComparison.Ordinal)).Select(Read)];

    private static IEnumerable<string> Resources => Assembly.GetExecutingAssembly().GetManifestResourceNames()
        .Where(n => n.StartsWith(Folder, StringComparison.Ordinal)).Order(StringComparer.Ordinal);

    /// <summary>Why the data files cannot lie beside a copy; null where they can, or do already.</summary>
    /// <param name="path">The path of the copy.</param>
    public string? WhyNot(string path) => Data.Keys.FirstOrDefault(n => IsAnother(PlaceOf(path, n), Data[n])) is { } taken
        ? $"another {taken} is there: a name in another folder" : null;

    /// <summary>Writes the data files beside a copy.</summary>
    /// <param name="path">The path of the copy.</param>
    /// <exception cref="IOException">One cannot be written, for the reason in the message.</exception>
    public void WriteData(string path)
    {
        foreach ((string name, string text) in Data)
        {
            string place = PlaceOf(path, name);
            if (!File.Exists(place))
            {
                Directory.CreateDirectory(Path.GetDirectoryName(place)!);
                WholeFile.Write(place, Encoding.UTF8.GetBytes(text));
            }
        }
    }

    private static string PlaceOf(string path, string name) => Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, name);

    private static bool IsAnother(string place, string text)
    {
        try
        {
            return Directory.Exists(place) || File.Exists(Path.GetDirectoryName(place))
                || (File.Exists(place) && File.ReadAllText(place) != text);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return true;
        }
    }

    private static ShippedScenario Read(string resource)
    {
        string name = resource[Folder.Length..];
        string text = TextOf(resource);
        string beside = $"{Folder}{Path.GetFileNameWithoutExtension(name)}/";
        var data = Resources.Where(n => n.StartsWith(beside, StringComparison.Ordinal)).ToDictionary(n => n[Folder.Length..], TextOf);
        return new ShippedScenario(name, ScenarioReader.Parse(text, name, n => data[n]).Scenario.Title, text, data);
    }

    private static string TextOf(string resource)
    {
        using var reader = new StreamReader(Assembly.GetExecutingAssembly().GetManifestResourceStream(resource)!);
        return reader.ReadToEnd();
    }
}
