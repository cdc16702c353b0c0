using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using AxleRisk.Files;
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
    public void Parts_of_another_model_are_refused()
    {
        string path = Part(1, 1);
        PartFile part = PartFile.Read(path);
        (part with { ModelVersion = part.ModelVersion - 1 }).Write(path);
        Refused(path, "was written by model");
        part.Write(path);
        Assert.Equal(0, Cli.Run("merge", path).Exit);
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

    // The largest whole number merged to "19957002775979.20 %", a negative count to a plausible figure.
    [Theory]
    [InlineData("life", "9223372036854775807")]
    [InlineData("damage", "9223372036854775807")]
    [InlineData("damage", "-3")]
    [InlineData("damage", "2")]
    [InlineData("life", "2")]
    public void A_changed_count_is_refused_with_and_without_a_checksum_that_agrees(string histogram, string count)
    {
        string[] parts = [Part(1, 2), Part(2, 2)];
        string original = File.ReadAllText(parts[0]);
        JsonObject changed = JsonNode.Parse(original)!.AsObject();
        changed["replicates"]![0]![histogram]!["bins"]![1] = JsonNode.Parse(count);
        File.WriteAllText(parts[0], changed.ToJsonString());
        Refused(parts[0], "its checksum does not agree", parts[1]);
        changed.Remove("sha256");
        changed["sha256"] = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(changed.ToJsonString())));
        File.WriteAllText(parts[0], changed.ToJsonString());
        Refused(parts[0], count == "2" ? "counts that do not add up" : "it is no part of a study", parts[1]);
        Assert.Equal(2, Cli.Run("risk", Scenario, "-n", "2000", "--part", "1/2", "--out", parts[0], "--resume").Exit);

        // The forged checksum is the one that the program writes: the unchanged text passes with it.
        Assert.Contains(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Without(original)))), original,
            StringComparison.Ordinal);
    }

    private static string Without(string part)
    {
        JsonObject document = JsonNode.Parse(part)!.AsObject();
        document.Remove("sha256");
        return document.ToJsonString();
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
