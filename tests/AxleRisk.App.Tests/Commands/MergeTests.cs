using System.Text.Json.Nodes;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

public sealed class MergeTests
{
    private readonly string folder = TemporaryFolder.New();

    [Fact]
    public void Merged_parts_answer_as_one_run()
    {
        string[] parts = [.. Enumerable.Range(1, 3).Select(k => Part(k, 3))];
        JsonNode merged = JsonNode.Parse(Cli.Run(["merge", .. parts.Reverse(), "--json"]).Out)!;
        JsonNode whole = JsonNode.Parse(Cli.Run("risk", Scenario, "-n", "2000", "--json").Out)!;
        Assert.Equal(whole["failure_probability"]!.ToJsonString(), merged["failure_probability"]!.ToJsonString());
        Assert.Equal(whole["lives_km_intervals"]!.ToJsonString(), merged["lives_km_intervals"]!.ToJsonString());
        Assert.Equal(whole["damage_by_leg"]!.ToJsonString(), merged["damage_by_leg"]!.ToJsonString());
    }

    [Fact]
    public void Parts_of_different_studies_are_refused_by_name()
    {
        string one = Part(1, 2);
        Refused(Part(2, 2, "--seed", "8"), "other settings", one);
        Refused(one, "overlaps", one);
        Refused(one, "a part is missing at the end");
        File.WriteAllText(Path.Combine(folder, "odd.json"), "{ \"kind\": 3 }");
        Refused(Path.Combine(folder, "odd.json"), "odd.json: it is no part of a study");
        Refused(Path.Combine(folder, "none.json"), "none.json: there is no such file");
    }

    [Fact]
    public void A_finished_state_resumes_to_the_same_answer()
    {
        string path = Part(1, 1);
        (int exit, string output, _) = Cli.Run("risk", Scenario, "-n", "2000", "--out", path, "--resume", "--json");
        Assert.Equal(0, exit);
        Assert.Equal(2000, (int)JsonNode.Parse(output)!["evaluations"]!);
        Assert.Equal(2, Cli.Run("risk", Cli.Shipped("desert-crossing"), "-n", "2000", "--out", path, "--resume").Exit);
    }

    private static string Scenario => Cli.Shipped("benchmark-five-legs");

    private string Part(int number, int of, params string[] more)
    {
        string path = Path.Combine(folder, $"part{number}of{of}{string.Concat(more)}.json");
        Assert.Equal(0, Cli.Run(["risk", Scenario, "-n", "2000", "--part", $"{number}/{of}", "--out", path, .. more]).Exit);
        return path;
    }

    private static void Refused(string file, string expected, params string[] before)
    {
        (int exit, _, string error) = Cli.Run(["merge", .. before, file]);
        Assert.Equal(2, exit);
        Assert.Contains(expected, error, StringComparison.Ordinal);
    }
}
