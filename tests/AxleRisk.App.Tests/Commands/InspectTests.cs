using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

public sealed class InspectTests
{
    private const string Crack = """

        [crack]
        initial_depth_mm = { distribution = "lognormal", median = 0.2, cov = 0.4, max = 1.5, knowledge = "unknown" }

        """;

    private const string Methods = """

        [[inspections]]
        name = "dye penetrant"
        a50_mm = 1.5
        a90_mm = 4
        false_calls = 0.03
        cost = 40

        [[inspections]]
        name = "eddy current"
        a50_mm = 0.6
        a90_mm = 1.5
        cost = 180

        """;

    private const string Plan = """

        [inspection_plan]
        target = 0.002
        repair_cost = 900
        failure_cost = 200000

        """;

    private static readonly string Shipped = WithoutInspection(File.ReadAllText(Cli.Shipped("desert-crossing")));

    [Fact]
    public void The_answer_fits_80_columns_and_makes_a_plan()
    {
        (int exit, string output, string error) = Cli.Run("inspect", FileOf(Crack + Methods + Plan), "-n", "512");
        Assert.Equal((0, ""), (exit, error));
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.DoesNotContain("NaN", output, StringComparison.Ordinal);
        Assert.Contains("(as planned)", output, StringComparison.Ordinal);
        Assert.Contains("A detection curve belongs to a procedure", output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_document_has_the_keys_other_programs_rely_on()
    {
        string[] head = ["estimate", "low", "high"];
        JsonNode document = JsonNode.Parse(Cli.Run("inspect", FileOf(Crack + Methods + Plan), "-n", "512", "--json").Out)!;
        foreach (string curve in (string[])["without_plan", "with_plan"])
        {
            JsonNode last = document[curve]!.AsArray()[^1]!;
            Assert.Equal(["distance_km", "failure_probability"], last.AsObject().Select(k => k.Key));
            Assert.Equal(4000, (double)last["distance_km"]!);
            Assert.Equal(head, last["failure_probability"]!.AsObject().Select(k => k.Key));
        }

        JsonNode look = document["inspections"]![0]!;
        Assert.All((string[])["found", "missed", "failure_before_next"], k => Assert.Equal(head, look[k]!.AsObject().Select(x => x.Key)));
        Assert.Equal((double)document["plan"]!["first_km"]!, (double)look["distance_km"]!);
        Assert.Equal(head, document["plan"]!["cost"]!.AsObject().Select(k => k.Key));
        Assert.True((double)document["plan"]!["every_km"]! > 0);
        Assert.True((double)document["plan"]!["greatest_between"]!["estimate"]! <= 0.002);
        Assert.Equal(4, document["plans"]!.AsArray().Count);
    }

    [Theory]
    [InlineData("", "there is no crack")]
    [InlineData(Crack, "there is no way of looking for the crack")]
    [InlineData(Crack + Methods, "no look is stated and nothing to plan by")]
    [InlineData(Methods, "inspections needs a crack to look for")]
    public void What_is_missing_is_named(string more, string expected)
    {
        (int exit, string _, string error) = Cli.Run("inspect", FileOf(more));
        Assert.Equal(2, exit);
        Assert.Contains(expected, error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a50_mm = 1.5", "a50_mm = 5", "inspections.a90_mm (4) must not be below a50_mm (5)", "a90_mm = 4")]
    [InlineData("median = 0.2, cov = 0.4, max = 1.5", "median = 6, cov = 0.4, max = 9.5", "crack.initial_depth_mm must be below the wall of", "initial_depth_mm =")]
    [InlineData("cost = 40", "cost = 40\nat_km = [4000]", "inspections.at_km must be below required_km (4000), not 4000", "at_km = [4000]")]
    [InlineData("cost = 40", "cost = 40\nat_km = [900, 900]", "inspections.at_km names a distance twice", "at_km = [900")]
    [InlineData("name = \"eddy current\"", "name = \"dye penetrant\"", "there are two inspections with the name", "a50_mm = 0.6")]
    [InlineData("[crack]", "[crack]\nfractions = [0, 1]\ndepths_mm = [0.1, 3]", "only one of crack.initial_depth_mm and a curve of your own", "fractions")]
    public void A_wrong_inspection_is_named_with_its_place(string from, string to, string expected, string at)
    {
        string text = Shipped + (Crack + Methods + Plan).Replace(from, to, StringComparison.Ordinal);
        string file = Path.Combine(TemporaryFolder.New(), "case.toml");
        File.WriteAllText(file, text);
        (int exit, string _, string error) = Cli.Run("inspect", file);
        Assert.Equal(2, exit);
        Assert.Contains(expected, error, StringComparison.Ordinal);
        string[] lines = text.Split('\n');
        int line = Array.FindIndex(lines, l => l.Contains(at, StringComparison.Ordinal)) + 1;
        Assert.InRange(LineOf(error), line - 1, line);
    }

    [Theory]
    [InlineData("method = \"x-ray\"\nat_km = 100", "there is no inspection \"x-ray\"")]
    [InlineData("method = \"dye penetrant\"\nat_km = 60000", "lies after the failure; it was last known to be whole at 50000 km")]
    [InlineData("method = \"dye penetrant\"\nat_km = 100\nfound = \"crack\"\ndepth_mm = 9\nsd_mm = 0.5", "is deeper than the wall of")]
    [InlineData("method = \"dye penetrant\"\nat_km = 100\nfound = \"crack\"\ndepth_mm = 2", "depth_mm and sd_mm belong together")]
    [InlineData("method = \"dye penetrant\"\nat_km = 100\ndepth_mm = 2\nsd_mm = 1", "belongs to found = \"crack\"")]
    public void A_wrong_look_in_the_evidence_is_named(string keys, string expected)
    {
        string file = FileOf($"{Crack}{Methods}\n[evidence]\nfailed_at_km = 50000\n\n[[evidence.looks]]\n{keys}\n");
        (int exit, string _, string error) = Cli.Run("causes", file);
        Assert.Equal(2, exit);
        Assert.Contains(expected, error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_look_is_evidence_of_its_causes_and_told()
    {
        string file = FileOf($"{Crack}{Methods}\n[[evidence.looks]]\nmethod = \"eddy current\"\nat_km = 3000\nfound = \"crack\"\ndepth_mm = 3\nsd_mm = 0.5\n");
        (int exit, string output, string error) = Cli.Run("causes", file, "-n", "20000");
        Assert.Equal((0, ""), (exit, error));
        Assert.Contains("Looked at with eddy current at 3,000 km: a crack, 3 mm", output, StringComparison.Ordinal);
        JsonNode look = JsonNode.Parse(Cli.Run("causes", file, "-n", "20000", "--json").Out)!["evidence"]!["looks"]![0]!;
        Assert.Equal(["method", "at_km", "found", "depth_mm", "sd_mm"], look.AsObject().Select(k => k.Key));
    }

    [Fact]
    public void A_trip_tells_before_which_leg_to_look_and_so_does_its_card()
    {
        string file = FileOf(Crack + Methods);
        (int exit, string output, string error) = Cli.Run("trip", file, "-n", "512");
        Assert.Equal((0, ""), (exit, error));
        Assert.Contains("One look for the crack, before each leg", output, StringComparison.Ordinal);
        Assert.Contains("If there is one look, eddy current before", output.ReplaceLineEndings(" ").Replace("    ", "", StringComparison.Ordinal), StringComparison.Ordinal);
        JsonNode trip = JsonNode.Parse(Cli.Run("trip", file, "-n", "512", "--json").Out)!;
        double planned = (double)trip["failure_probability"]!["estimate"]!;
        foreach (JsonNode? look in trip["looks"]!.AsArray())
        {
            Assert.True((double)look!["fails_after_clean_look"]!["estimate"]! < (double)look["fails_after"]!["estimate"]!);
            Assert.True((double)look["failure_probability"]!["estimate"]! < planned * 1.1);
        }
    }

    private static string FileOf(string more) => Cli.Shared(Shipped + more);

    private static int LineOf(string error) =>
        int.Parse(error.Split(".toml(")[1].Split(',')[0], System.Globalization.CultureInfo.InvariantCulture);

    // The story has a crack of its own, at the end of the file, and a decision that says what a failure costs.
    private static string WithoutInspection(string text)
    {
        string crackless = text.IndexOf("# What cracks and looks", StringComparison.Ordinal) is > 0 and var at ? text[..at] : text;
        return Regex.Replace(crackless, @"\n\[decision\]\nfailure_cost = .*\n", "\n");
    }
}
