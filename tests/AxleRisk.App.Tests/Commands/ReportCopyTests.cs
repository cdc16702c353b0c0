using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using AxleRisk.App.Sections;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>A report can be repeated from what is in its folder.</summary>
public sealed class ReportCopyTests
{
    private readonly string folder = TemporaryFolder.New();

    [Fact]
    public void The_copy_has_the_same_digest_and_gives_the_same_digits()
    {
        string report = Path.Combine(folder, "out"), again = Path.Combine(folder, "again");
        Assert.Equal((0, ""), Run("report", ScenarioWithData(), "--data-folder", folder, "-n", "100", "--out", report));
        string[] files = [.. Directory.GetFiles(Path.Combine(report, "scenario"), "*", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(report, f).Replace('\\', '/')).Order(StringComparer.Ordinal)];
        Assert.Equal(
            ["scenario/case.toml", "scenario/data/walls.csv", "scenario/elsewhere/root" + Arms.Replace('\\', '/'), "scenario/elsewhere/up-1/springs.csv"],
            files);

        // What the scenario was read from is gone: the copy has to do, on any machine.
        Directory.Delete(Path.Combine(folder, "case"), recursive: true);
        File.Delete(Path.Combine(folder, "springs.csv"));
        File.Delete(Arms);
        string copy = Path.Combine(report, "scenario", "case.toml");
        JsonNode risk = JsonNode.Parse(File.ReadAllText(Path.Combine(report, "json", "risk.json")))!;
        JsonNode check = JsonNode.Parse(Cli.Run("check", copy, "--json").Out)!;
        Assert.Equal((string)risk["digest"]!, (string)check["digest"]!);
        Assert.Contains((string)check["digest"]!, File.ReadAllText(Path.Combine(report, "report.md")), StringComparison.Ordinal);
        Assert.Contains((string)check["digest"]!, Cli.Run("risk", copy, "-n", "100", "--json").Out, StringComparison.Ordinal);

        string[] command = File.ReadAllText(Path.Combine(report, "repeat.txt")).TrimEnd().Split(' ');
        Assert.Equal(["axlerisk", "report", "scenario/case.toml", "--out", "../repeated"], command[..5]);
        Assert.Equal((0, ""), Run(["report", copy, "--out", again, .. command[5..]]));
        string[] written = [.. Directory.GetFiles(Path.Combine(report, "json")).Select(f => Path.GetFileName(f)!)];
        Assert.Contains("base.json", written);
        Assert.All(written, name => Assert.Equal(Digits(report, name), Digits(again, name)));
        Assert.All(
            Directory.GetFiles(Path.Combine(report, "tables")),
            f => Assert.Equal(File.ReadAllText(f), File.ReadAllText(Path.Combine(again, "tables", Path.GetFileName(f)))));
    }

    [Fact]
    public void A_report_whose_copy_is_another_scenario_is_not_written()
    {
        ScenarioDocument document = ScenarioReader.ReadFile(FewFactors.With(""));
        var model = new LifeModel(document.Scenario);
        var studies = ReportStudies.Run(document, model, ReportPlan.Of(model, 100, 1), new RunOptions());
        byte[] other = [.. document.Sources[0].Bytes.ToArray(), (byte)'\n'];
        string report = Path.Combine(folder, "out");
        foreach (byte[] bytes in new[] { other, "title = "u8.ToArray() })
        {
            ReportStudies wrong = studies with { Document = document with { Sources = [document.Sources[0] with { Bytes = bytes }] } };
            IOException e = Assert.Throws<IOException>(() => ReportFiles.Write(wrong, report));
            Assert.Contains("scenario/case.toml", e.Message, StringComparison.Ordinal);
            Assert.Empty(Directory.GetFileSystemEntries(folder));
        }
    }

    private string Arms => Path.Combine(folder, "arms.csv");

    /// <summary>A scenario with data in its folder, above it, and named by a whole path.</summary>
    private string ScenarioWithData()
    {
        string path = Path.Combine(folder, "case", "case.toml");
        Directory.CreateDirectory(Path.Combine(folder, "case", "data"));
        File.WriteAllText(Path.Combine(folder, "case", "data", "walls.csv"), "wall_mm\n5.8\n6.0\n6.1\n6.3\n");
        File.WriteAllText(Path.Combine(folder, "springs.csv"), "rate\n38\n40\n43\n");
        File.WriteAllText(Arms, "arm\n219\n220\n221\n");
        string text = File.ReadAllText(FewFactors.With(""));
        foreach ((string key, string file, string column) in new[]
        {
            ("wall_mm", "data/walls.csv", "wall_mm"), ("spring_n_per_mm", "../springs.csv", "rate"), ("lever_arm_mm", Arms, "arm"),
        })
        {
            string changed = Regex.Replace(
                text, $"^{key} = .*$", $"{key} = {{ distribution = \"sample\", file = '{file}', column = \"{column}\" }}", RegexOptions.Multiline);
            Assert.NotEqual(text, changed);
            text = changed;
        }

        File.WriteAllText(path, text);
        return path;
    }

    private static (int Exit, string Error) Run(params string[] args)
    {
        (int exit, _, string error) = Cli.Run(args);
        return (exit, error);
    }

    /// <summary>A JSON document without the name of its file, which its warnings tell, too.</summary>
    private static string Digits(string report, string name)
    {
        JsonObject document = JsonNode.Parse(File.ReadAllText(Path.Combine(report, "json", name)))!.AsObject();
        return document.Remove("file") && document.Remove("warnings") ? document.ToJsonString() : "";
    }
}
