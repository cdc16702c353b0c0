using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Tests.Files;

namespace AxleRisk.App.Tests.Screens.Editing;

/// <summary>A folder of its own with the good scenario in it.</summary>
internal sealed class Scratch : IDisposable
{
    private readonly string folder = TemporaryFolder.New();

    public Scratch(string text = Good.Text) => File.WriteAllText(PathTo(), text);

    public string PathTo(string name = "a.toml") => Path.Combine(folder, name);

    public EditedScenario Open() => EditedScenario.Open(PathTo());

    public void Dispose() => Directory.Delete(folder, recursive: true);
}
