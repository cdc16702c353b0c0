using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>Wrong numbers and distributions of <c>vehicle.unsprung_kg</c>, whose value begins at (6,15).</summary>
public class ValueErrorTests
{
    private const string Stated = "unsprung_kg = 90";

    [Theory]
    [InlineData("\"heavy\"", 15, "vehicle.unsprung_kg must be a number above 0, not \"heavy\"")]
    [InlineData("0", 15, "vehicle.unsprung_kg must be a number above 0, not 0")]
    [InlineData("-1.50", 15, "vehicle.unsprung_kg must be a number above 0, not -1.50")]
    [InlineData("nan", 15, "vehicle.unsprung_kg must be a number above 0, not nan")]
    [InlineData("inf", 15, "vehicle.unsprung_kg must be a number above 0, not inf")]
    [InlineData("1e999", 15, "vehicle.unsprung_kg must be a number above 0, not 1e999")]
    [InlineData("true", 15, "vehicle.unsprung_kg must be a number above 0, not true")]
    [InlineData("1979-05-27", 15, "vehicle.unsprung_kg must be a number above 0, not 1979-05-27")]
    [InlineData("[90]", 15, "vehicle.unsprung_kg must be a number above 0, not an array")]
    [InlineData("\"a\\u0007\\u001b[2J\"", 15, "vehicle.unsprung_kg must be a number above 0, not \"a??[2J\"")]
    public void A_wrong_number_says_what_would_be_right(string value, int column, string message) => Check(value, column, message);

    [Theory]
    [InlineData("{ mean = 90 }", 15, "vehicle.unsprung_kg.distribution is missing")]
    [InlineData("{ distribution = 3 }", 32, "vehicle.unsprung_kg.distribution must be a text in quotes, not 3")]
    [InlineData("{ distribution = \"norml\", mean = 90 }", 32,
        "vehicle.unsprung_kg: unknown distribution \"norml\"; did you mean \"normal\"?")]
    [InlineData("{ distribution = \"normal\", mean = 90 }", 15,
        "vehicle.unsprung_kg: normal takes mean and sd, or mean and cov, or quantiles, not mean alone")]
    [InlineData("{ distribution = \"normal\" }", 15,
        "vehicle.unsprung_kg: normal takes mean and sd, or mean and cov, or quantiles, not nothing")]
    [InlineData("{ distribution = \"normal\", mean = 90, sd = 4, cov = 0.1 }", 15,
        "vehicle.unsprung_kg: normal takes mean and sd, or mean and cov, or quantiles, not mean, sd and cov")]
    [InlineData("{ distribution = \"normal\", mean = 90, sdd = 4 }", 53,
        "unknown key \"sdd\" in vehicle.unsprung_kg; did you mean \"sd\"?")]
    [InlineData("{ distribution = \"normal\", mean = 90, deviation = 4 }", 53,
        "unknown key \"deviation\" in vehicle.unsprung_kg; normal takes mean and sd, or mean and cov, or quantiles")]
    [InlineData("{ distribution = \"normal\", mean = 90, sd = \"4\" }", 58, "vehicle.unsprung_kg.sd must be a finite number, not \"4\"")]
    [InlineData("{ distribution = \"normal\", mean = 90, sd = -4 }", 58, "vehicle.unsprung_kg: sd must be above 0, not -4")]
    [InlineData("{ distribution = \"normal\", mean = 90, sd = 4, knowledge = \"known\" }", 73,
        "vehicle.unsprung_kg.knowledge must be \"varies\" or \"unknown\", not \"known\"")]
    [InlineData("{ distribution = \"normal\", mean = 90, sd = 4, nominal = 0 }", 71,
        "vehicle.unsprung_kg.nominal must be a number above 0, not 0")]
    [InlineData("{ distribution = \"normal\", mean = 90, sd = 4, max = nan }", 67,
        "vehicle.unsprung_kg.max must be a finite number, not nan")]
    [InlineData("{ distribution = \"normal\", quantiles = [0.05, 3] }", 54,
        "vehicle.unsprung_kg.quantiles must be two pairs of probability and value, such as [[0.05, 3.0], [0.95, 5.2]]")]
    [InlineData("{ distribution = \"normal\", quantiles = [[0.05, 3], [0.95, 4]], mean = 3 }", 15,
        "vehicle.unsprung_kg: normal takes mean and sd, or mean and cov, or quantiles, not mean and quantiles")]
    [InlineData("{ distribution = \"normal\", quantiles = [[0.05, 3], [0.01, 4]] }", 67,
        "vehicle.unsprung_kg: p2 must lie between p1 (0.05) and 1, not 0.01")]
    [InlineData("{ distribution = \"gamma\", mean = 90, cov = 0 }", 58, "vehicle.unsprung_kg: cov must be above 0, not 0")]
    [InlineData("{ distribution = \"gamma\", mean = 90, cov = 1e-9 }", 58,
        "vehicle.unsprung_kg: a gamma distribution of shape 1E+18 is a normal one: state that")]
    [InlineData("{ distribution = \"choice\", values = [80, -1], weights = [0.5, 0.5] }", 56,
        "vehicle.unsprung_kg.values must each be a number above 0, not -1")]
    [InlineData("{ distribution = \"choice\", values = [80, 90], weights = [0.5, 0.4] }", 71,
        "vehicle.unsprung_kg.weights must add up to 1, not 0.9")]
    [InlineData("{ distribution = \"choice\", values = [80, 90], weights = [1] }", 71,
        "vehicle.unsprung_kg.weights must be as many as the values: 2, not 1")]
    [InlineData("{ distribution = \"choice\", values = [], weights = [1] }", 51,
        "vehicle.unsprung_kg.values must be an array with at least one item")]
    [InlineData("{ distribution = \"choice\", values = [80, 90], weights = [0.5, 0.5], min = 3 }", 83,
        "vehicle.unsprung_kg: min truncates continuous distributions only, not a choice")]
    public void A_wrong_distribution_says_what_would_be_right(string value, int column, string message) => Check(value, column, message);

    [Theory]
    // Phi(-2) = 0.0228 and Phi(-1) = 0.159.
    [InlineData("unsprung_kg = 90", "unsprung_kg = { distribution = \"normal\", mean = 8, sd = 4 }",
        "a.toml(6,15): vehicle.unsprung_kg must be a number above 0, but normal(mean 8, sd 4) is not with probability 0.0228; truncate it with min")]
    [InlineData("unsprung_kg = 90", "unsprung_kg = 90\npayload_share = { distribution = \"normal\", mean = 0.8, sd = 0.2 }",
        "a.toml(7,17): vehicle.payload_share must be a number from 0 to 1, but normal(mean 0.8, sd 0.2) is not with probability 0.159; truncate it with min and max")]
    public void A_distribution_that_leaves_the_domain_is_an_error_with_its_probability(string old, string replacement, string expected) =>
        Assert.Equal([expected], Good.ErrorsWith(old, replacement));

    [Fact]
    public void A_truncated_distribution_stays_inside()
    {
        string text = Good.With(Stated, "unsprung_kg = { distribution = \"normal\", mean = 8, sd = 4, min = 1, max = 20 }");
        Core.Scenarios.Value value = Good.Parse(text).Scenario.Find(Core.Scenarios.Quantities.UnsprungMass)!.Value;
        Core.Distributions.Distribution distribution = Assert.IsType<Core.Scenarios.Value.Uncertain>(value).Distribution;
        Assert.Equal((1.0, 20.0), (distribution.Minimum, distribution.Maximum));
    }

    private static void Check(string value, int column, string message) =>
        Assert.Equal([$"a.toml(6,{column}): {message}"], Good.ErrorsWith(Stated, $"unsprung_kg = {value}"));
}
