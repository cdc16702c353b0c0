using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Files;

public class SyntaxErrorTests
{
    [Theory]
    [InlineData("unsprung_kg = 90", "unsprung_kg = 90\nunsprung_kg = 91", "a.toml(7,1): unsprung_kg is already defined at line 6")]
    [InlineData("[axle]", "[vehicle]\n[axle]", "a.toml(11,1): vehicle is already defined at line 4")]
    [InlineData("[axle]", "[vehicle.sprung_kg]\n[axle]", "a.toml(11,1): vehicle.sprung_kg is already defined at line 5")]
    [InlineData("[axle]", "[vehicle.sprung_kg.x]\n[axle]", "a.toml(11,1): vehicle.sprung_kg is already defined at line 5")]
    [InlineData("[axle]", "[title]\n[axle]", "a.toml(11,1): title is already defined at line 1")]
    [InlineData("unsprung_kg = 90", "unsprung_kg = 90\nsprung_kg.mean = 91", "a.toml(7,1): sprung_kg is already defined at line 5")]
    [InlineData("low = 30, high", "low = 30, low = 31, high", "a.toml(30,56): low is already defined at line 30")]
    [InlineData("[[use.legs]]\nname = \"gravel\"", "[use.legs]\nname = \"gravel\"", "a.toml(26,1): use.legs is already defined at line 20")]
    public void What_is_defined_twice_is_an_error_that_names_the_first(string old, string replacement, string expected) =>
        Assert.Equal([expected], Good.ErrorsWith(old, replacement));

    [Fact]
    public void A_table_may_come_after_its_sub_table()
    {
        string text = Good.With("[vehicle]",
            "[fatigue.miner_sum]\ndistribution = \"uniform\"\nlow = 0.5\nhigh = 1.5\n\n[fatigue]\ncounting = \"dirlik\"\n\n[vehicle]");
        Assert.Equal(1.0, Good.Parse(text).Scenario.Find(Core.Scenarios.Quantities.MinerSum)!.Value.Nominal, 12);
    }

    [Fact]
    public void All_syntax_errors_are_reported()
    {
        string[] errors = Good.ErrorsOf("title = \nrequired_km = @\n[vehicle\n");
        Assert.True(errors.Length >= 3, string.Join('\n', errors));
        Assert.StartsWith("a.toml(1,9): ", errors[0]);
        Assert.Contains(errors, e => e.StartsWith("a.toml(2,15): ", StringComparison.Ordinal));
        Assert.Contains(errors, e => e.StartsWith("a.toml(3,9): ", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{a=")]
    public void Deep_nesting_is_an_error_and_no_overflow(string bracket) =>
        Assert.EndsWith("brackets are nested too deeply",
            Assert.Single(Good.ErrorsOf("title = " + string.Concat(Enumerable.Repeat(bracket, 100_000)))));

    [Fact]
    public void A_key_of_very_many_parts_is_an_error() =>
        Assert.Contains("a.toml(31,1): a key has at most 16 parts, not 50001",
            Good.ErrorsOf($"{Good.Text}[{string.Concat(Enumerable.Repeat("a.", 50_000))}b]"));

    // The parser's own sentences on duplicates quote the whole first table: 250,000 times 3 MB.
    [Fact]
    public void Many_duplicates_of_a_large_table_do_not_exhaust_memory()
    {
        string[] errors = Good.ErrorsOf($"[t]\nx = \"{new string('x', 3_000_000)}\"\n{string.Concat(Enumerable.Repeat("[t]\n", 50_000))}");
        Assert.Equal(101, errors.Length);
        Assert.Matches(@"^a\.toml: and \d+ more errors$", errors[^1]);
    }

    [Fact]
    public void Invalid_UTF_8_is_an_error_at_its_place()
    {
        byte[] bytes = [.. "title = \"a\"\nx = \"é"u8, 0xFF, .. "\"\n"u8];
        ScenarioException e = Assert.Throws<ScenarioException>(() => ScenarioReader.Parse(bytes, "a.toml"));
        Assert.Equal("a.toml(2,7): the text is not valid UTF-8", Assert.Single(e.Errors).ToString());
    }

    [Fact]
    public void A_byte_order_mark_and_line_ends_of_Windows_are_read_over()
    {
        byte[] bytes = [0xEF, 0xBB, 0xBF, .. System.Text.Encoding.UTF8.GetBytes(Good.Text.Replace("\n", "\r\n"))];
        Assert.Equal("A tube on gravel", ScenarioReader.Parse(bytes, "a.toml").Scenario.Title);
    }

    [Fact]
    public void A_text_over_4_MB_is_refused() =>
        Assert.Equal(["a.toml: the file is over 4 MB"], Good.ErrorsOf(new string('#', (4 << 20) + 1)));
}
