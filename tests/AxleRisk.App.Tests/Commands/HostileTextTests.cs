using System.Globalization;
using System.Text.Json.Nodes;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>Titles and names of a scenario that try to be more than text, in the answers of trip, fleet and confirm.</summary>
public sealed class HostileTextTests
{
    private const string Title = "title = \"=1+1 \\u202e <b> | [l](http://h.invalid)\"\n";
    private const string Name = "=cmd|'/c calc'!A1 \\u202e <b>";

    [Theory]
    [InlineData("trip", "desert-crossing", "-n", "64", "--target", "1")]
    [InlineData("fleet", "warranty-clinic-van", "-n", "1024")]
    [InlineData("confirm", "desert-crossing", "--points", "0", "--km", "0.1")]
    public void Nothing_of_a_scenario_commands_the_terminal_or_a_spreadsheet(string command, string shipped, params string[] options)
    {
        string file = Changed(shipped);
        string csv = Path.Combine(Path.GetDirectoryName(file)!, "figures.csv");
        (int exit, string output, string error) = Cli.Run([command, file, .. options, "--csv", csv]);
        Assert.Equal(0, exit);
        Assert.Empty(error);
        Assert.DoesNotContain(output, c => char.GetUnicodeCategory(c) == UnicodeCategory.Format);
        Assert.All(output + File.ReadAllText(csv), c => Assert.True(c is '\n' or '\r' or >= ' ' and not '\u007f', $"U+{(int)c:X4}"));
        Assert.All(
            File.ReadAllLines(csv).SelectMany(line => line.Split(',')),
            cell => Assert.False(cell.TrimStart('"') is ['=' or '@' or '+', ..] or ['-', not (>= '0' and <= '9'), ..], cell));
    }

    [Fact]
    public void A_remedy_of_a_trip_is_a_text_in_every_form()
    {
        string file = Changed("desert-crossing");
        string csv = Path.Combine(Path.GetDirectoryName(file)!, "figures.csv");
        string json = Cli.Run("trip", file, "-n", "64", "--target", "1", "--json", "--csv", csv).Out;
        Assert.DoesNotContain('\u001b', json);
        Assert.Contains(JsonNode.Parse(json)!["remedies"]!.AsArray(),
            r => ((string?)r!["name"])!.StartsWith("=cmd|", StringComparison.Ordinal));
        Assert.Contains("'=cmd|", File.ReadAllText(csv), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("a b")]
    [InlineData("<b>")]
    [InlineData("\\u001b[31m")]
    public void A_leg_of_a_trip_has_a_plain_name(string name)
    {
        string text = File.ReadAllText(Cli.Shipped("desert-crossing"))
            .Replace("name = \"dune-belt\"", $"name = \"{name}\"", StringComparison.Ordinal);
        (int exit, string output, string error) = Cli.Run("trip", Cli.Temporary(text), "-n", "64");
        Assert.Equal(2, exit);
        Assert.Empty(output);
        Assert.Contains("the name of a leg is up to 40 letters, digits, - and _", error, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', error);
    }

    [Theory]
    [InlineData("trip", "desert-crossing", "title = ")]
    [InlineData("fleet", "warranty-clinic-van", "title = ")]
    [InlineData("confirm", "desert-crossing", "title = ")]
    [InlineData("trip", "desert-crossing", "name = \"walking")]
    public void Control_characters_are_refused_where_they_are_read(string command, string shipped, string line)
    {
        string[] lines = [.. File.ReadAllLines(Cli.Shipped(shipped))
            .Select(l => l.StartsWith(line, StringComparison.Ordinal) ? l.Split('=')[0] + "= \"\\u001b]0;x\\u0007\"" : l)];
        (int exit, string output, string error) = Cli.Run(command, Cli.Temporary(string.Join('\n', lines)));
        Assert.Equal(2, exit);
        Assert.Empty(output);
        Assert.Contains("one line of up to ", error, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', error);
    }

    private static string Changed(string shipped)
    {
        string[] lines = File.ReadAllLines(Cli.Shipped(shipped));
        string text = Title + string.Join('\n', lines.Where(line => !line.StartsWith("title = ", StringComparison.Ordinal)));
        return Cli.Temporary(text.Replace("name = \"narrow wheels\"", $"name = \"{Name}\"", StringComparison.Ordinal));
    }
}
