using System.Text.Json.Nodes;
using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Tests.Files;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>The currency of a scenario's costs: read, and printed with every cost.</summary>
public sealed class CurrencyTests
{
    private const string Costs = """

        [[remedies]]
        name = "thicker tube"
        cost = 1085.5
        change = { "axle.wall_mm" = 7 }

        [fleet]
        vehicles = 2000
        distance_km_per_year = 3e4
        warranty_months = 36
        warranty_km = 1e5
        cost_per_claim = 2600

        """;

    private static readonly string With = "currency = \"EUR\"\n" + Good.Text + Costs;

    [Theory]
    [InlineData("EUR")]
    [InlineData("US $")]
    [InlineData("12345678")]
    public void A_short_word_is_a_currency(string word) =>
        Assert.Equal(word, Good.Parse($"currency = \"{word}\"\n" + Good.Text).Scenario.Currency);

    [Fact]
    public void None_is_assumed() => Assert.Null(Good.Parse(Good.Text).Scenario.Currency);

    [Theory]
    [InlineData("'euro and cents'", "a.toml(2,12): currency must be one line of up to 8 characters, such as EUR; it has 14")]
    [InlineData("''", "a.toml(2,12): currency must be one line of up to 8 characters, such as EUR; it is empty")]
    [InlineData("\"E\\u001b\"", "a.toml(2,12): currency must be one line of up to 8 characters, such as EUR; it has a control character (U+001B)")]
    [InlineData("3", "a.toml(2,12): currency must be a text in quotes, not 3")]
    public void What_is_no_short_word_is_refused(string value, string expected) =>
        Assert.Equal([expected], Good.ErrorsWith("required_km = 50000", $"currency = {value}\nrequired_km = 50000"));

    [Fact]
    public void Every_cost_is_printed_with_it()
    {
        string file = Cli.Temporary(With);
        string remedies = Words(Cli.Run("remedies", file, "-n", "1024").Out);
        Assert.Contains("thicker tube: wall thickness = 7 (cost 1,085.5 EUR)", remedies, StringComparison.Ordinal);
        Assert.Contains(" to ", remedies[remedies.IndexOf("The best single remedy", StringComparison.Ordinal)..], StringComparison.Ordinal);
        Assert.Contains("(cost 1,085.5 EUR).", remedies, StringComparison.Ordinal);
        string fleet = Words(Cli.Run("fleet", file, "-n", "1024").Out);
        Assert.Matches(@"Expected cost: [0-9,.]+ EUR \([0-9,.]+ to [0-9,.]+ EUR\)", fleet);
        Assert.Matches(@"and cost [0-9,.]+ to [0-9,.]+ EUR\.", fleet);
        Assert.Equal("EUR", (string?)JsonNode.Parse(Cli.Run("fleet", file, "-n", "1024", "--json").Out)!["currency"]);
        Assert.Equal("EUR", (string?)JsonNode.Parse(Cli.Run("remedies", file, "-n", "1024", "--json").Out)!["currency"]);
    }

    [Fact]
    public void Costs_without_one_are_bare_numbers()
    {
        string file = Cli.Temporary(Good.Text + Costs);
        Assert.Contains("(cost 1,085.5).", Words(Cli.Run("remedies", file, "-n", "1024").Out), StringComparison.Ordinal);
        Assert.Matches(@"Expected cost: [0-9,.]+ \([0-9,.]+ to [0-9,.]+\)", Words(Cli.Run("fleet", file, "-n", "1024").Out));
        Assert.False(JsonNode.Parse(Cli.Run("fleet", file, "-n", "1024", "--json").Out)!.AsObject().ContainsKey("currency"));
    }

    [Fact]
    public void The_console_lists_it()
    {
        InputRow Row(string text) =>
            InputRows.Of(Good.Parse(text).Scenario, text).SelectMany(g => g.Rows).Single(r => r.Name == "currency");
        Assert.Equal(("EUR", true, true), (Row(With).ValueText, Row(With).IsStated, Row(With).CanReset));
        Assert.Equal(("none", false, false), (Row(Good.Text).ValueText, Row(Good.Text).IsStated, Row(Good.Text).CanReset));
    }

    private static string Words(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
