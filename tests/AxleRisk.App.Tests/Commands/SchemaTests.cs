using System.Text.Json.Nodes;
using AxleRisk.App.Schemas;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>The command that prints schemas.</summary>
public class SchemaTests
{
    [Fact]
    public void Without_a_name_it_prints_the_scenarios()
    {
        (int exit, string text, string error) = Cli.Run("schema");
        Assert.Equal((0, ""), (exit, error));
        Assert.Equal("AxleRisk scenario", (string?)JsonNode.Parse(text)!["title"]);
        Assert.Equal(text, Cli.Run("schema", "scenario").Out);
    }

    [Fact]
    public void It_writes_one_to_a_file_and_all_to_a_folder()
    {
        string folder = Path.Combine(TemporaryFolder.New(), "new");
        Assert.Equal(0, Cli.Run("schema", "--out", folder).Exit);
        Assert.Equal(
            SchemaBook.Names.Select(n => $"axlerisk-{n}.schema.json").Order(),
            Directory.GetFiles(folder).Select(p => Path.GetFileName(p)).Order());
        string file = Path.Combine(folder, "deeper", "r.json");
        Assert.Equal((0, $"Written: {file}\n", ""), Cli.Run("schema", "risk", "--out", file));
        Assert.Equal(Cli.Run("schema", "risk").Out, File.ReadAllText(file));
    }

    [Fact]
    public void A_name_that_there_is_not_is_an_error_that_lists_those_there_are()
    {
        (int exit, string text, string error) = Cli.Run("schema", "risks");
        Assert.Equal((2, ""), (exit, text));
        Assert.Contains("there is no schema \"risks\"; there are scenario, check, base, risk,", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_in_the_folders_place_is_left_alone()
    {
        string file = Cli.Temporary("mine");
        (int exit, string text, string error) = Cli.Run("schema", "--out", file);
        Assert.Equal((1, "", $"axlerisk: cannot write {file}: it is a file, not a folder\n"), (exit, text, error));
        Assert.Equal("mine", File.ReadAllText(file));
    }
}
