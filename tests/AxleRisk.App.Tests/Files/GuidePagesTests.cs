using System.Text.RegularExpressions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>
/// The pages for practitioners: what they show is what their scenarios hold, the keys they name exist, and links lead somewhere.
/// Their transcripts are renewed and compared outside the tests.
/// </summary>
public class GuidePagesTests
{
    private static readonly string Docs = Repository.PathTo("docs");

    private static readonly string Tutorial = Text("docs", "tutorial.md");

    private static readonly string Distributions = Text("docs", "distributions.md");

    public static TheoryData<string> Pages =>
    [
        "README.md", "DEVELOPERS.md",
        .. Directory.GetFiles(Docs, "*.md", SearchOption.AllDirectories).Select(p => Path.GetRelativePath(Repository.PathTo(), p)),
    ];

    public static TheoryData<string> Scenarios =>
        [.. Directory.GetFiles(Path.Combine(Docs, "tutorial"), "*.toml").Select(p => Path.GetFileName(p))];

    public static TheoryData<string> Examples =>
        [.. Regex.Matches(Distributions, @"`(\{ distribution = [^`]*\})`").Select(m => m.Groups[1].Value)];

    [Theory]
    [MemberData(nameof(Pages))]
    public void Every_link_inside_the_repository_leads_to_a_file_and_a_heading(string page)
    {
        string folder = Path.GetDirectoryName(Repository.PathTo(page))!;
        foreach (Match link in Regex.Matches(WithoutBlocks(Text(page)), @"\]\((?!https?:)([^)#\s]*)(?:#([^)\s]+))?\)"))
        {
            string target = link.Groups[1].Value is { Length: > 0 } path
                ? Path.GetFullPath(Path.Combine(folder, path)) : Repository.PathTo(page);
            Assert.True(Path.Exists(target), $"{page}: {link.Value}");
            if (link.Groups[2].Success)
            {
                Assert.Contains(link.Groups[2].Value, Anchors(File.ReadAllText(target)));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Scenarios))]
    public void A_scenario_of_the_tutorial_is_valid_and_says_that_it_is_invented(string name)
    {
        string path = Path.Combine(Docs, "tutorial", name);
        Assert.NotEmpty(ScenarioReader.ReadFile(path).Scenario.Legs);
        Assert.StartsWith("# Invented", File.ReadAllText(path));
    }

    [Fact]
    public void The_tutorial_shows_what_its_scenarios_hold()
    {
        string[] shown = [.. Regex.Matches(Tutorial, "```toml\n(.*?)```", RegexOptions.Singleline).Select(m => m.Groups[1].Value)];
        string[] files = ["1-numbers.toml", "2-spread.toml", "3-measured.toml"];
        Assert.Equal(files.Length, shown.Length);
        Assert.Equal(Text("docs", "tutorial", files[0]), shown[0]);
        foreach ((string file, string block) in files.Zip(shown))
        {
            string[] lines = Text("docs", "tutorial", file).Split('\n');
            Assert.All(block.Split('\n'), line => Assert.Contains(line, lines));
        }
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void An_example_of_a_distribution_is_valid(string example)
    {
        string text = Good.With("""{ distribution = "uniform", low = 30, high = 60 }""", example);
        Scenario scenario = Good.Parse(text, _ => "wall_mm\n6.1\n5.9\n").Scenario;
        Assert.IsType<Value.Uncertain>(scenario.Find(Quantities.Speed, 1)!.Value);
    }

    [Fact]
    public void Every_input_that_the_pages_name_exists()
    {
        string[] known = [.. Quantities.All.Select(q => $"{q.Section}.{q.Key}"), .. Change.WordNames, "use.legs", "use.mix"];
        string[] named = [.. Regex.Matches(Tutorial + Distributions, @"`((?:vehicle|axle|bearing|detail|use|fatigue)\.[a-z0-9_]+)`")
            .Select(m => m.Groups[1].Value).Distinct()];
        Assert.True(named.Length > 20);
        Assert.All(named, name => Assert.Contains(name, known));
    }

    [Fact]
    public void The_cited_result_is_that_of_the_tutorial()
    {
        string page = Text("docs", "citing.md").Replace("\n> ", " ", StringComparison.Ordinal);
        GroupCollection cited = Regex.Match(
            page,
            @"by 120,000 km: (\S+ %) \(95 % interval of sampling (\S+ to \S+ %)\)\. "
                + @"`axlerisk risk (\S+) (-n \d+)`;.* SHA-256 (\w{64});").Groups;
        string file = cited[3].Value;
        Assert.Equal(ScenarioReader.ReadFile(Path.Combine(Docs, "tutorial", file)).Digest, cited[5].Value);
        string command = Regex.Escape($"$ axlerisk risk docs/tutorial/{file} {cited[4].Value}\n");
        string transcript = Regex.Match(Tutorial, $"{command}.*?```", RegexOptions.Singleline).Value;
        Assert.Contains($"by 120,000 km: {cited[1].Value}\n  95 % interval {cited[2].Value};", transcript);
    }

    private static string Text(params string[] path) => File.ReadAllText(Repository.PathTo(path));

    private static string WithoutBlocks(string page) => Regex.Replace(page, "```.*?```", "", RegexOptions.Singleline);

    // As GitHub names the anchor of a heading (from memory): small letters, blanks to hyphens, other signs than - and _ left out.
    private static IEnumerable<string> Anchors(string page) =>
        Regex.Matches(WithoutBlocks(page), "^#+ (.*)$", RegexOptions.Multiline).Select(m =>
            Regex.Replace(m.Groups[1].Value.Trim().ToLowerInvariant(), @"[^\w\- ]", "").Replace(' ', '-'));
}
