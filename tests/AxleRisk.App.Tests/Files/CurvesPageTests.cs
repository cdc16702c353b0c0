using System.Text.RegularExpressions;
using AxleRisk.Core.Damage.Fatigue;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>The page of the S-N curves has the values that the program computes with, and its examples are read.</summary>
public class CurvesPageTests
{
    private static readonly string Page = File.ReadAllText(Repository.PathTo("docs", "curves.md"));

    public static TheoryData<string> Examples => [.. Regex.Matches(Page, "```toml\n(.*?)```", RegexOptions.Singleline).Select(m => m.Groups[1].Value)];

    [Fact]
    public void Every_table_is_that_of_the_catalogue()
    {
        var page = new MarkedPage("docs", "curves.md");
        Assert.Equal(
            SnCatalogue.Catalogues.SelectMany(c => SnCatalogue.Environments(c).Select(e => $"{c}, {e}")), page.Names);
        page.Check(TableOf);
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Every_example_is_read(string example)
    {
        string text = Regex.Replace(Good.Text, @"\[detail\].*?\n\n", example + "\n", RegexOptions.Singleline);
        Assert.True(Good.Parse(text).Scenario.Detail.IsOwn);
    }

    // The one line that is worked out by hand there.
    [Fact]
    public void The_line_by_hand_is_right()
    {
        Assert.Contains("80 MPa:\nlog10 N = 11.855 - 3 x 1.903 = 6.146, that is 1,398,700 cycles", Page);
        Assert.Equal(1_398_700.0, SnCatalogue.Find("DNV-RP-C203", "F")!.CyclesToFailure(80), 50.0);
    }

    private static string TableOf(string name)
    {
        string[] parts = name.Split(", ", 2);
        return MarkedPage.Table(
            ["category", "m", "log10 a", "m below the knee", "log10 a below it", "knee, MPa", "cut-off, MPa", "thickness exponent"],
            SnCatalogue.Categories(parts[0]).Select(c => SnCatalogue.Find(parts[0], c, parts[1])!).Select(c => (string[])
            [
                c.Category, $"{c.Lines[0].Slope}", $"{c.Lines[0].Log10A:0.000}",
                c.Lines.Length > 1 ? $"{c.Lines[1].Slope}" : "-", c.Lines.Length > 1 ? $"{c.Lines[1].Log10A:0.000}" : "-",
                c.KneesMPa is [var knee] ? $"{knee:0.00}" : "-", c.CutOffMPa > 0 ? $"{c.CutOffMPa:0.00}" : "-",
                c.ThicknessExponent > 0 ? $"{c.ThicknessExponent:0.00}" : "-",
            ]));
    }
}
