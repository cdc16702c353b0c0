using System.Text.RegularExpressions;
using System.Xml.Linq;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>The command report.</summary>
public sealed partial class ReportTests
{
    private readonly string folder = Path.Combine(TemporaryFolder.New(), "out");

    [Fact]
    public void A_story_is_told_from_summary_to_repetition()
    {
        string output = Written(ShippedReports.Command("broken-housing")[1..]);
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80 || line.Contains(folder, StringComparison.Ordinal), line));
        XElement page = Page();
        Assert.Equal(
            [
                "Summary", "Inputs", "Base case, and one factor at a time", "Failure probability over distance", "Which factors decide it",
                "Combined effects", "Causes, from the evidence", "Remedies", "The decision, by expected cost", "What to measure next",
                "Method and limits of validity", "Cautions", "To repeat it",
            ],
            page.Descendants("h2").Select(h => h.Value));

        // The main figure is the risk command's own, to the last digit.
        string number = page.Descendants("div").First(d => d.Value.StartsWith("Failure probability by", StringComparison.Ordinal))
            .Elements("p").Single(p => (string?)p.Attribute("class") == "number").Value.Replace('\u00a0', ' ');
        Assert.Contains($": {number}\n", Cli.Run("risk", Cli.Shipped("broken-housing"), "-n", "9000").Out, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", page.Value, StringComparison.Ordinal);
        Assert.Equal(4, page.Descendants("p").Count(p => (string?)p.Attribute("class") == "warning")); // one of them: no bump stop stated
        Assert.All(page.Descendants("figcaption"), c => Assert.Contains("evaluations", c.Value, StringComparison.Ordinal));
    }

    [Fact]
    public void A_trip_leads_the_report_and_has_its_own_section()
    {
        Written(ShippedReports.Command("desert-crossing")[1..]);
        XElement page = Page();
        Assert.Contains("The trip", page.Descendants("h2").Select(h => h.Value));
        Assert.DoesNotContain("NaN", page.Value, StringComparison.Ordinal);

        // The first figure of the report is the trip command's own, with the evaluations that the report names.
        string number = Numbers(page)[0];
        Match command = Regex.Match(page.Value, @"axlerisk trip \S+ --evaluations (\d+) --seed 1");
        string answer = Cli.Run("trip", Cli.Shipped("desert-crossing"), "-n", command.Groups[1].Value).Out;
        Assert.Contains($"As planned, {number} (", answer, StringComparison.Ordinal);
        string words = Flat(page.Value);
        string verdict = answer.Split("\n\n")[1];
        foreach (string paragraph in new[] { verdict[verdict.IndexOf('\n', StringComparison.Ordinal)..] }
            .Concat(answer.Split("\n\n").Where(p => p.StartsWith("The trip: ", StringComparison.Ordinal))))
        {
            Assert.Contains(Flat(paragraph).Split(". ")[0], words, StringComparison.Ordinal);
        }

        Assert.All(TripLegs(answer), leg => Assert.Contains(leg, words, StringComparison.Ordinal));
    }

    [Fact]
    public void A_fleet_leads_the_report_and_has_its_own_section()
    {
        Written(ShippedReports.Command("warranty-clinic-van")[1..]);
        XElement page = Page();
        Assert.Contains("The fleet under warranty", page.Descendants("h2").Select(h => h.Value));
        Match command = Regex.Match(page.Value, @"axlerisk fleet \S+ --evaluations (\d+) --seed 1");
        string answer = Cli.Run("fleet", Cli.Shipped("warranty-clinic-van"), "-n", command.Groups[1].Value).Out;
        Assert.Contains($": {Numbers(page)[1]}\n  of 2,400 vehicles", answer, StringComparison.Ordinal);
        Match write = Regex.Match(Flat(answer), "Write down: .*? claims and cost [0-9,]+ to [0-9,]+");
        Assert.True(write.Success);
        Assert.Equal(2, Regex.Count(Flat(page.Value), Regex.Escape(write.Value)));
        Assert.Contains("longest warranty", page.Value, StringComparison.Ordinal);
        Assert.Contains("loosest wall tolerance, times what it is", page.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Everything_that_is_referred_to_is_there_and_nothing_else()
    {
        Written(ShippedReports.Command("warranty-clinic-van")[1..]);
        string markdown = File.ReadAllText(Path.Combine(folder, "report.md"));
        string[] shown = [.. PictureLink().Matches(markdown).Select(m => m.Groups[1].Value)];
        string[] tables = [.. TableName().Matches(markdown).Select(m => m.Value)];
        string[] json = [.. Regex.Matches(markdown, @"json/[\w-]+\.json").Select(m => m.Value)];
        string[] sources = ["scenario/warranty-clinic-van.toml", "repeat.txt"];
        Assert.All(sources, s => Assert.Contains(s, markdown, StringComparison.Ordinal));
        string[] files = [.. Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(folder, f))];
        Assert.Equal(files.Order(), shown.Concat(tables).Concat(json).Concat(sources).Append("report.html").Append("report.md").Append("files.csv").Order());
        Assert.Equal(26, shown.Count(s => s.StartsWith("figures/input-", StringComparison.Ordinal))); // one a factor
        byte[] signature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]; // ISO/IEC 15948, 5.2
        Assert.All(shown, s => Assert.Equal(signature, File.ReadAllBytes(Path.Combine(folder, s))[..8]));
    }

    [Fact]
    public void Threads_change_no_byte_and_a_report_is_replaced_by_another()
    {
        Written(Cli.Shipped("benchmark-five-legs"), "-n", "100", "--threads", "1");
        string first = File.ReadAllText(Path.Combine(folder, "files.csv"));
        Written(Cli.Shipped("benchmark-five-legs"), "-n", "100", "--threads", "3");
        Assert.Equal(first, File.ReadAllText(Path.Combine(folder, "files.csv")));
    }

    [Fact]
    public void A_scenario_that_tries_to_be_more_than_text_does_not_succeed()
    {
        string text = File.ReadAllText(Cli.Shipped("benchmark-five-legs"))
            .Replace("title = \"Benchmark: five legs, thirteen factors\"", "title = \"<script>x</script> & 'q'\"", StringComparison.Ordinal)
            + "\n[[remedies]]\nname = \"=cmd|<b> | [l](http://h.x)\"\nchange = { \"axle.wall_mm\" = 7 }\n";
        string output = Written(Cli.Temporary(text), "-n", "100");
        Assert.DoesNotContain('\u001b', output);
        XElement page = Page();
        Assert.Equal("<script>x</script> & 'q'", page.Descendants("title").Single().Value);
        Assert.Empty(page.Descendants("script"));
        Assert.All(page.Descendants("b"), b => Assert.Matches("^(Table|Figure) [0-9]+\\.$", b.Value));
        Assert.All(page.Descendants("a"), a => Assert.StartsWith("#", (string?)a.Attribute("href"), StringComparison.Ordinal));
        Assert.Contains("'=cmd", File.ReadAllText(Path.Combine(folder, "tables", "remedies.csv")), StringComparison.Ordinal);
        Assert.DoesNotContain("](http", File.ReadAllText(Path.Combine(folder, "report.md"))
            .Replace("\\](http", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void A_scenario_without_any_uncertainty_has_a_report_too()
    {
        string certain = Distribution().Replace(File.ReadAllText(Cli.Shipped("benchmark-five-legs")), m => m.Groups[1].Value);
        certain = certain.Replace("log10_life_scatter = 1", "log10_life_scatter = 0", StringComparison.Ordinal);
        Written(Cli.Temporary(certain), "-n", "100");
        Assert.Contains("No value of this scenario is uncertain.", Page().Value, StringComparison.Ordinal);
        Assert.DoesNotContain("Combined effects", Page().Value, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_not_written_by_the_program_is_kept()
    {
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "thesis.txt"), "years of work");
        (int exit, string output, string error) = Cli.Run("report", Cli.Shipped("benchmark-five-legs"), "--out", folder);
        Assert.Equal(2, exit);
        Assert.Empty(output);
        Assert.Contains("will not replace", error, StringComparison.Ordinal);
        Assert.Equal("years of work", File.ReadAllText(Path.Combine(folder, "thesis.txt")));
    }

    [Fact]
    public void A_wrong_file_leaves_no_folder()
    {
        (int exit, _, string error) = Cli.Run("report", "nowhere.toml", "--out", folder);
        Assert.Equal(2, exit);
        Assert.Contains("nowhere.toml: there is no such file", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder));
    }

    private string Written(params string[] args)
    {
        (int exit, string output, string error) = Cli.Run(["report", .. args, "--out", folder]);
        Assert.Empty(error);
        Assert.Equal(0, exit);
        return output;
    }

    private static string[] Numbers(XElement page) =>
        [.. page.Descendants("p").Where(p => (string?)p.Attribute("class") == "number").Select(p => p.Value.Replace('\u00a0', ' '))];

    /// <summary>A text on one line, whatever its spaces.</summary>
    private static string Flat(string text) => Regex.Replace(text.Replace('\u00a0', ' '), @"\s+", " ").Trim();

    private static IEnumerable<string> TripLegs(string answer) =>
        answer.Split("\n\n").First(p => p.StartsWith("By leg", StringComparison.Ordinal)).Split('\n').Skip(2)
            .Select(row => row.Split(' ', StringSplitOptions.RemoveEmptyEntries)[0]);

    private XElement Page()
    {
        string html = File.ReadAllText(Path.Combine(folder, "report.html"));
        return XDocument.Parse(html[html.IndexOf("<html", StringComparison.Ordinal)..]).Root!;
    }

    [GeneratedRegex(@"!\[.*?\]\(([^)]+\.png)\)")]
    private static partial Regex PictureLink();

    [GeneratedRegex(@"tables/[a-z]+\.csv")]
    private static partial Regex TableName();

    [GeneratedRegex(@"\{ distribution = .*?(?:mean|median) = ([\d.]+).*?\}")]
    private static partial Regex Distribution();
}
