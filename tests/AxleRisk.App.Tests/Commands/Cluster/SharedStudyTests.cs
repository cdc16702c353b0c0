using System.Text;
using System.Text.Json.Nodes;
using AxleRisk.Files.Cluster;
using Xunit;

namespace AxleRisk.App.Tests.Commands.Cluster;

/// <summary>A study in parts has the digits of one run, whoever of the parts came first, was killed, or was sent twice.</summary>
public sealed class SharedStudyTests
{
    private readonly string folder = Path.Combine(TemporaryFolder.New(), "it's a \"study\" of 50% $HOME");

    // Scenarios with data files beside them among them (light-truck), with several modes, and with searches.
    [Theory]
    [InlineData("risk", "benchmark-five-legs", "40000", 3)]
    [InlineData("risk", "desert-crossing", "5000", 2, "--method", "crude")]
    [InlineData("rank", "warranty-clinic-van", "20000", 3)]
    [InlineData("fleet", "warranty-clinic-van", "1024", 3)]
    [InlineData("fleet", "light-truck", "1024", 3)]
    [InlineData("learn", "light-truck", "65536", 2, "--distances", "50000,100000")]
    [InlineData("inspect", "desert-crossing", "512", 2)]
    public void Merged_parts_answer_as_one_run(string study, string scenario, string evaluations, int parts, params string[] asked)
    {
        Make(study, scenario, evaluations, parts, asked);
        for (int part = parts; part >= 1; part--)
        {
            Assert.Equal((0, $"Part {part} of {parts} is done.\n", ""), Cli.Run("cluster", "part", folder, $"{part}"));
        }

        (int exit, string merged, string error) = Cli.Run("cluster", "merge", folder, "--json");
        Assert.Equal((0, ""), (exit, error));
        Assert.Equal(Digits(Cli.Run([study, Copy(scenario), "-n", evaluations, "--json", .. asked]).Out), Digits(merged));
    }

    // The parts of a search wait for one another: here they do so at the same time.
    [Fact]
    public void Parts_go_on_together()
    {
        Make("fleet", "warranty-clinic-van", "1024", 4);
        int[] exits = [.. Enumerable.Range(1, 4).AsParallel().WithDegreeOfParallelism(4)
            .Select(part => Cli.Run("cluster", "part", folder, $"{part}", "--threads", "1").Exit)];
        Assert.Equal([0, 0, 0, 0], exits);
        Assert.Equal(
            Digits(Cli.Run("fleet", Copy("warranty-clinic-van"), "-n", "1024", "--json").Out),
            Digits(Cli.Run("cluster", "merge", folder, "--json").Out));
    }

    [Fact]
    public void What_a_killed_part_has_begun_another_does()
    {
        Make("fleet", "warranty-clinic-van", "1024", 2);
        string begun = Path.Combine(folder, "parts", "2.pass001.begun");
        File.WriteAllText(begun, "a machine that was switched off");
        File.SetLastWriteTimeUtc(begun, DateTime.UnixEpoch);
        Assert.Equal(0, Cli.Run("cluster", "part", folder, "1").Exit);
        Assert.False(File.Exists(begun));
    }

    [Fact]
    public void Lost_parts_are_named_and_done_again()
    {
        Make("risk", "benchmark-five-legs", "40000", 4);
        Assert.Equal(0, Cli.Run("cluster", "part", folder, "1").Exit);
        Assert.Equal(0, Cli.Run("cluster", "part", folder, "3").Exit);
        string alive = Path.Combine(folder, "parts", "2.alive");
        File.WriteAllText(alive, "node7 process 12");
        File.SetLastWriteTimeUtc(alive, DateTime.UnixEpoch);
        string cut = Path.Combine(folder, "parts", "3.pass001");
        File.WriteAllBytes(cut, File.ReadAllBytes(cut)[..^8]);

        (int exit, string status, _) = Cli.Run("cluster", "status", folder);
        Assert.Equal(1, exit);
        string[] lines = status.Split('\n');
        Assert.Equal("risk of benchmark-five-legs.toml: 1 of 4 parts done", lines[0]);
        Assert.StartsWith("  part 2: lost: no sign of life for ", lines[1]);
        Assert.EndsWith("(node7 process 12)", lines[1]);
        Assert.Equal($"  part 3: damaged: {cut} is missing or not as it was written", lines[2]);
        Assert.Equal("  part 4: no word of it: it has not begun", lines[3]);
        Assert.Contains("--array=2-4 ", lines[5]);

        (exit, _, string error) = Cli.Run("cluster", "merge", folder);
        Assert.Equal(2, exit);
        Assert.Contains("parts 2,4 of 4 have not given their share", error);
        foreach (string part in (string[])["2", "3", "4"])
        {
            Assert.Equal(0, Cli.Run("cluster", "part", folder, part).Exit);
        }

        Assert.Equal(0, Cli.Run("cluster", "status", folder).Exit);
        (exit, string merged, error) = Cli.Run("cluster", "merge", folder, "--json");
        Assert.True(error.Length == 0, error);
        Assert.Equal(0, exit);
        Assert.Equal(Digits(Cli.Run("risk", Copy("benchmark-five-legs"), "-n", "40000", "--json").Out), Digits(merged));
    }

    [Fact]
    public async Task A_part_that_was_ended_leaves_word_and_no_share()
    {
        Make("risk", "benchmark-five-legs", "400000", 1);
        using var source = new CancellationTokenSource();
        await source.CancelAsync();
        using var output = new StringWriter();
        var terminal = new AxleRisk.App.Commands.Terminal
        { Out = output, Error = output, ShowsProgress = false, Clock = TimeProvider.System };
        int exit = await AxleRisk.App.Commands.AxleRiskCommand.RunAsync(["cluster", "part", folder, "1"], terminal, source.Token);
        Assert.Equal(130, exit);
        Assert.Equal([Path.Combine(folder, "parts", "1.ended")], Directory.GetFiles(Path.Combine(folder, "parts")));
        Assert.Contains("  part 1: ended before it was done (", Cli.Run("cluster", "status", folder).Out);
    }

    // What has been learned can be written by the merge: work beyond that of the parts.
    [Fact]
    public void The_merge_writes_what_was_learned()
    {
        Make("learn", "light-truck", "65536", 2);
        Assert.Equal(0, Cli.Run("cluster", "part", folder, "2").Exit);
        Assert.Equal(0, Cli.Run("cluster", "part", folder, "1").Exit);
        string merged = Path.Combine(folder, "scenario", "merged.toml");
        (int exit, _, string error) = Cli.Run("cluster", "merge", folder, "--out", merged);
        Assert.Equal((0, ""), (exit, error));
        string whole = Path.Combine(folder, "scenario", "whole.toml");
        Assert.Equal(0, Cli.Run("learn", Copy("light-truck"), "-n", "65536", "--out", whole).Exit);
        Assert.Equal(File.ReadAllText(whole), File.ReadAllText(merged));
    }

    [Fact]
    public void A_folder_that_was_changed_is_refused()
    {
        Make("risk", "benchmark-five-legs", "5000", 2);
        string study = Path.Combine(folder, SharedStudy.FileName), text = File.ReadAllText(study);
        Refused("has changed since the folder was made", () => File.AppendAllText(Copy("benchmark-five-legs"), "\n# x\n"));
        Refused("was made by version 0.0.9", () => File.WriteAllText(study, text.Replace($"\"{Product.Version}\"", "\"0.0.9\"")));
        Refused("names no study: manual", () => File.WriteAllText(study, text.Replace("\"risk\"", "\"manual\"")));
        Refused("--csv=/tmp/x cannot be asked", () => File.WriteAllText(study, text.Replace("\"5000\"", "\"5000\", \"--csv=/tmp/x\"")));
        Refused("it does not say which study is run in parts", () => File.WriteAllText(study, "{}"));
        Refused("there is no such file", () => File.Delete(study));

        void Refused(string expected, Action change)
        {
            string scenario = Copy("benchmark-five-legs");
            byte[] before = File.ReadAllBytes(scenario);
            change();
            foreach (string[] args in (string[][])[["part", folder, "1"], ["merge", folder]])
            {
                (int exit, _, string error) = Cli.Run(["cluster", .. args]);
                Assert.Equal(2, exit);
                Assert.Contains(expected, error);
            }

            File.WriteAllBytes(scenario, before);
            File.WriteAllText(study, text);
        }
    }

    [Theory]
    [InlineData("1-3,5,7-8", 1, 2, 3, 5, 7, 8)]
    [InlineData("4", 4)]
    [InlineData("", new int[0])]
    public void Numbers_are_written_as_a_batch_system_takes_them(string expected, params int[] parts) =>
        Assert.Equal(expected, PartFolder.Numbers(parts));

    private string Copy(string scenario) => Path.Combine(folder, "scenario", scenario + ".toml");

    private void Make(string study, string scenario, string evaluations, int parts, params string[] asked)
    {
        (int exit, _, string error) = Cli.Run(
        [
            "cluster", "slurm", Cli.Shipped(scenario), "--study", study, "-n", evaluations, "--parts", $"{parts}", "--out", folder,
            "--", .. asked,
        ]);
        Assert.Equal((0, ""), (exit, error));
    }

    // All but the time it took.
    private static string Digits(string json)
    {
        JsonObject document = JsonNode.Parse(json)!.AsObject();
        var kept = new StringBuilder();
        foreach ((string key, JsonNode? value) in document.Where(d => d.Key is not ("seconds" or "evaluations_per_second")))
        {
            kept.Append(key).Append(": ").Append(value?.ToJsonString()).Append('\n');
        }

        return kept.ToString();
    }
}
