using AxleRisk.App.Tests.Files;
using Xunit;

namespace AxleRisk.App.Tests.Screens;

/// <summary>The states of the screens can be tested and read without the library that draws them.</summary>
public sealed class PlainStateTests
{
    [Fact]
    public void Only_the_views_name_the_terminal_library()
    {
        string[] files = Directory.GetFiles(Repository.PathTo("src", "AxleRisk.App"), "*.cs", SearchOption.AllDirectories);
        string views = Path.Combine("Screens", "Views");
        Assert.Contains(files, f => f.Contains(views, StringComparison.Ordinal));
        Assert.DoesNotContain(files, f => !f.Contains(views, StringComparison.Ordinal) && !f.Contains("obj", StringComparison.Ordinal)
            && File.ReadAllText(f).Contains("Terminal.Gui", StringComparison.Ordinal));
    }
}
