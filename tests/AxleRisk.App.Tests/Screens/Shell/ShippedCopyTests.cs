using AxleRisk.App.Screens.Shell;
using AxleRisk.App.Tests.Files;
using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Shell;

/// <summary>The scenarios inside the program and what is written beside a copy of one.</summary>
public sealed class ShippedCopyTests
{
    [Fact]
    public void Every_shipped_scenario_can_be_copied() =>
        Assert.Equal(Repository.Scenarios.Select(p => Path.GetFileName(p)), ShippedScenario.All.Select(s => s.Name));

    [Fact]
    public void A_copy_has_its_data_files_beside_it_and_another_file_of_that_name_is_left_alone()
    {
        ShippedScenario shipped = ShippedScenario.All.Single(s => s.Data.Count > 0);
        string copy = Path.Combine(TemporaryFolder.New(), "mine.toml");
        Assert.Null(shipped.WhyNot(copy));
        shipped.WriteData(copy);
        File.WriteAllText(copy, shipped.Text);
        Assert.Equal(
            ScenarioReader.ReadFile(Repository.PathTo("scenarios", shipped.Name)).Digest, ScenarioReader.ReadFile(copy).Digest);

        // The same data serve a second copy; other data do not.
        Assert.Null(shipped.WhyNot(copy));
        string first = Path.Combine(Path.GetDirectoryName(copy)!, shipped.Data.Keys.First());
        File.WriteAllText(first, "mine");
        Assert.Contains(shipped.Data.Keys.First(), shipped.WhyNot(copy), StringComparison.Ordinal);
        shipped.WriteData(copy);
        Assert.Equal("mine", File.ReadAllText(first));
    }
}
