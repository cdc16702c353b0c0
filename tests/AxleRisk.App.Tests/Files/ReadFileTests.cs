using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Files;

public sealed class ReadFileTests : IDisposable
{
    private readonly DirectoryInfo folder = new(TemporaryFolder.New());

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void A_missing_file_is_an_error_of_the_file()
    {
        ScenarioException e = Assert.Throws<ScenarioException>(() => ScenarioReader.ReadFile("no/such.toml"));
        Assert.Equal("no/such.toml: there is no such file", Assert.Single(e.Errors).ToString());
        Assert.Equal("no/such.toml: there is no such file", e.Message);
    }

    [Theory]
    [InlineData("")]
    [InlineData("a\0b")]
    public void A_path_that_is_none_is_an_error_of_the_file(string path) =>
        Assert.Equal(0, Assert.Single(Assert.Throws<ScenarioException>(() => ScenarioReader.ReadFile(path)).Errors).Line);

    [Fact]
    public void A_folder_is_an_error_of_the_file()
    {
        ScenarioException e = Assert.Throws<ScenarioException>(() => ScenarioReader.ReadFile(folder.FullName));
        Assert.Equal($"{folder.FullName}: it is a folder, not a file", Assert.Single(e.Errors).ToString());
    }

    [Fact]
    public void Data_files_are_looked_for_beside_the_scenario()
    {
        string path = Path.Combine(folder.FullName, "s.toml");
        File.WriteAllText(path,
            Good.With("unsprung_kg = 90", "unsprung_kg = { distribution = \"sample\", file = \"data/m.csv\", column = \"kg\" }"));
        folder.CreateSubdirectory("data");
        File.WriteAllText(Path.Combine(folder.FullName, "data", "m.csv"), "kg\n88\n92\n");
        ScenarioDocument document = ScenarioReader.ReadFile(path);
        Assert.Equal(path, document.FileName);
        Assert.Equal(88, document.Scenario.Find(Core.Scenarios.Quantities.UnsprungMass)!.Value is Core.Scenarios.Value.Uncertain u
            ? u.Distribution.Minimum : 0);
    }

    [Fact]
    public void A_name_that_is_not_UTF_8_is_told_as_such()
    {
        ScenarioException e = Assert.Throws<ScenarioException>(() => ScenarioReader.ReadFile("\uFFFD.toml"));
        Assert.Equal("\uFFFD.toml: its name is not valid UTF-8: rename the file", e.Message);
    }

    [Theory]
    [InlineData("../m.csv")]
    [InlineData("link/m.csv")]
    [InlineData("m-link.csv")]
    public void Data_outside_the_scenario_s_folder_has_to_be_allowed(string name)
    {
        DirectoryInfo inner = folder.CreateSubdirectory("inner");
        string path = Path.Combine(inner.FullName, "s.toml");
        File.WriteAllText(Path.Combine(folder.FullName, "m.csv"), "kg\n88\n92\n");
        Directory.CreateSymbolicLink(Path.Combine(inner.FullName, "link"), "..");
        File.CreateSymbolicLink(Path.Combine(inner.FullName, "m-link.csv"), "link/m.csv");
        File.WriteAllText(path,
            Good.With("unsprung_kg = 90", $"unsprung_kg = {{ distribution = \"sample\", file = \"{name}\", column = \"kg\" }}"));
        ScenarioException e = Assert.Throws<ScenarioException>(() => ScenarioReader.ReadFile(path));
        Assert.Equal(
            $"{path}(6,49): vehicle.unsprung_kg: cannot read \"{name}\": it lies outside the scenario's folder: move it there, or allow its folder with --data-folder DIR",
            e.Message);
        Assert.NotNull(ScenarioReader.ReadFile(path, [folder.FullName]).Scenario);
    }

    // sha256sum of the file's bytes, computed with .NET's one-shot function: without data files the two are the same.
    [Fact]
    public void The_digest_without_data_files_is_the_SHA_256_of_the_file()
    {
        string path = Repository.Scenarios[0];
        string expected = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(path)));
        Assert.Equal(expected, ScenarioReader.ReadFile(path).Digest);
        Assert.Equal(expected, ScenarioReader.Parse(File.ReadAllText(path), "x").Digest);
    }
}
