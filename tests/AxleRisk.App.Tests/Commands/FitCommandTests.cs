using System.Text.Json.Nodes;
using AxleRisk.App.Tests.Schemas;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary><c>axlerisk fit</c>: what it prints and what it refuses.</summary>
public class FitCommandTests
{
    // NIST/SEMATECH e-Handbook 8.4.1.2: Weibull of shape 1.7208 and scale 606.5, by counts and a column of what was still whole.
    [Fact]
    public void Censored_columns_give_the_published_fit_as_the_schema_says()
    {
        string file = Written("failed_h;whole_h;units\n54;;1\n187;;1\n216;;1\n240;;1\n244;;1\n335;;1\n361;;1\n373;;1\n375;;1\n386;;1\n;500;10\n");
        (int exit, string text, string error) = Cli.Run("fit", file, "--column", "failed_h", "--above", "whole_h", "--count", "units", "--json");
        Assert.True(exit == 0, error);
        JsonNode document = JsonNode.Parse(text)!;
        Assert.Empty(Checked.Faults("fit", document));
        JsonNode weibull = document["fits"]!.AsArray().Single(f => (string)f!["family"]! == "weibull")!;
        Assert.Equal(606.5276, (double)weibull["parameters"]!["scale"]!, 3);
        Assert.Equal(-75.134618, (double)weibull["log_likelihood"]!, 5);
        Assert.Null(weibull["anderson_darling"]);
        double[] order = [.. document["fits"]!.AsArray().Select(f => (double)f!["aicc"]!)];
        Assert.Equal(order.Order(), order);
    }

    [Fact]
    public void The_line_to_paste_is_one_that_a_scenario_takes()
    {
        string file = Written("wall_mm\n5.9\n6.1\n6.0\n5.8\n6.2\n6.05\n5.95\n");
        (int exit, string text, _) = Cli.Run("fit", file, "--column", "wall_mm");
        Assert.Equal(0, exit);
        string line = text.Split('\n').First(l => l.StartsWith("wall_mm = { distribution", StringComparison.Ordinal));
        string scenario = File.ReadAllText(Cli.Shipped("warranty-clinic-van")).Replace("outside_diameter_mm", line + "\noutside_diameter_mm", StringComparison.Ordinal);
        string[] kept = [.. scenario.Split('\n').Where(l => l == line || !l.StartsWith("wall_mm", StringComparison.Ordinal))];
        (int checkedExit, _, string fault) = Cli.Run("check", Cli.Temporary(string.Join('\n', kept)));
        Assert.True(checkedExit == 0, fault);
        Assert.All(text.Split('\n'), l => Assert.True(l.Length <= 80 || l.Contains('{', StringComparison.Ordinal), l));
    }

    [Theory]
    [InlineData("x\n1\n2\n", "x", "values; a fit needs 3")]
    [InlineData("x\n1\n1\n1\n", "x", "all values are the same")]
    [InlineData("x\n1\ntwo\n3\n", "x", "(3,1): x must be a finite number, not \"two\"")]
    [InlineData("x,y\n1,2\n3,\"4\n5,6\n", "x", "(3,3): a quotation mark is not closed in its line")]
    [InlineData("x,y\n1,2\n3\n", "x", "(3,1): this line holds 1 values, but the first line names 2 columns")]
    [InlineData("x\n1\n2\n3\n", "z", "(1,1): there is no column \"z\"; did you mean \"x\"?")]
    [InlineData("x\n\"1,5\"\n2\n3\n", "x", "(2,1): x must be a finite number, not \"1,5\"")]
    [InlineData("", "x", "there is nothing in the file")]
    public void Bad_input_is_refused_with_its_place(string table, string column, string message)
    {
        (int exit, string text, string error) = Cli.Run("fit", Written(table), "--column", column);
        Assert.Equal(2, exit);
        Assert.Equal("", text);
        Assert.Contains(message, error, StringComparison.Ordinal);
    }

    private static string Written(string table)
    {
        string path = Path.Combine(TemporaryFolder.New(), "measured.csv");
        File.WriteAllText(path, table);
        return path;
    }
}
