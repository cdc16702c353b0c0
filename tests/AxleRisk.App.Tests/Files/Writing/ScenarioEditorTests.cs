using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Files.Writing;

/// <summary>What an edit makes of a text, character by character.</summary>
public class ScenarioEditorTests
{
    [Theory]
    [InlineData("wall_mm = 7.0 # drawing\n", 7.5, "wall_mm = 7.5 # drawing\n")]
    [InlineData("wall_mm = 7.00\n", 8, "wall_mm = 8.00\n")]
    [InlineData("wall_mm=7", 7.25, "wall_mm=7.25")]
    [InlineData("wall_mm = 200_000\n", 150_000, "wall_mm = 150_000\n")]
    [InlineData("wall_mm = 2_000.5\n", -1234567, "wall_mm = -1_234_567.0\n")]
    [InlineData("wall_mm = 1e3\n", 2000, "wall_mm = 2000\n")]
    [InlineData("wall_mm = 7.0\r\nx = 1\r\n", 1e-20, "wall_mm = 1E-20\r\nx = 1\r\n")]
    [InlineData("# 😀 é\nwall_mm = 7\n", 8, "# 😀 é\nwall_mm = 8\n")]
    [InlineData("wall_mm = { distribution = \"normal\", mean = 7.0, sd = 0.3 } # d\n", 6, "wall_mm = 6 # d\n")]
    public void A_number_takes_the_place_and_manner_of_the_old(string text, double number, string expected) =>
        Assert.Equal(expected, Set(text, "wall_mm", TomlValue.Of(number)));

    [Theory]
    [InlineData("7.50", "wall_mm = 7.50\n")]
    [InlineData("+7_0", "wall_mm = +7_0\n")]
    [InlineData(".5", "wall_mm = 1\n")]
    [InlineData("07", "wall_mm = 1\n")]
    public void A_number_as_typed_is_kept_where_it_is_good_toml(string literal, string expected) =>
        Assert.Equal(expected, Set("wall_mm = 3\n", "wall_mm", new TomlValue.Number(1, literal)));

    [Theory]
    [InlineData("w = { distribution = \"normal\", mean = 7.0, sd = 0.30 } # c\n",
        "w = { distribution = \"normal\", mean = 7.0, sd = 0.25 } # c\n")]
    [InlineData("w = { sd=1, mean = 7, distribution='normal' }\n", "w = { sd=0.25, mean = 7, distribution='normal' }\n")]
    [InlineData("w = { distribution = \"normal\", mean = 7, cov = 0.1 }\n", "w = { distribution = \"normal\", mean = 7, sd = 0.25 }\n")]
    [InlineData("w = 3\n", "w = { distribution = \"normal\", mean = 7, sd = 0.25 }\n")]
    [InlineData("w.distribution = \"normal\"\nw.mean = 7 # m\nw.sd = 1\n", "w.distribution = \"normal\"\nw.mean = 7 # m\nw.sd = 0.25\n")]
    [InlineData("[w]\ndistribution = \"normal\"\nmean = 7\n# cov\ncov = 0.1\n",
        "[w]\ndistribution = \"normal\"\nmean = 7\nsd = 0.25\n# cov\n")]
    [InlineData("w = { distribution = \"normal\", # n\n  mean = 7, # m\n  sd = 1, # s\n}\n",
        "w = { distribution = \"normal\", # n\n  mean = 7, # m\n  sd = 0.25, # s\n}\n")]
    public void A_distribution_is_changed_where_it_differs(string text, string expected) => Assert.Equal(
        expected,
        Set(text, "w", TomlValue.TableOf(("distribution", TomlValue.Of("normal")), ("mean", TomlValue.Of(7)), ("sd", TomlValue.Of(0.25)))));

    [Theory]
    [InlineData("[w]\ndistribution = \"normal\"\nmean = 7\n\n[x]\n", "w = 5\n[x]\n")]
    [InlineData("w.a = 1\nw.b = 2 # b\n[x]\n", "w = 5\n# b\n[x]\n")]
    public void A_table_of_lines_becomes_a_number(string text, string expected) =>
        Assert.Equal(expected, Set(text, "w", TomlValue.Of(5)));

    [Theory]
    [InlineData("[vehicle]\nsprung_kg = 1 # s\n# u\nunsprung_kg = 2\n\n# axle\n[axle]\n", "vehicle.payload_kg",
        "[vehicle]\nsprung_kg = 1 # s\npayload_kg = 9\n# u\nunsprung_kg = 2\n\n# axle\n[axle]\n")]
    [InlineData("[vehicle]\n  sprung_kg = 1", "vehicle.payload_kg", "[vehicle]\n  sprung_kg = 1\n  payload_kg = 9\n")]
    [InlineData("[vehicle] # v\r\nunsprung_kg = 2\r\n", "vehicle.payload_kg", "[vehicle] # v\r\npayload_kg = 9\r\nunsprung_kg = 2\r\n")]
    [InlineData("title = \"t\"\n\n# what to do\n[[remedies]]\nname = \"x\"\n", "fatigue.miner_sum",
        "title = \"t\"\n\n[fatigue]\nminer_sum = 9\n\n# what to do\n[[remedies]]\nname = \"x\"\n")]
    [InlineData("title = \"t\"", "fatigue.miner_sum", "title = \"t\"\n\n[fatigue]\nminer_sum = 9\n")]
    [InlineData("[[use.legs]]\nname = \"a\"\n", "use.speed_factor", "[use]\nspeed_factor = 9\n\n[[use.legs]]\nname = \"a\"\n")]
    [InlineData("[[use.legs]]\nname = \"a\"\nshare = 1\n[[use.legs]]\nname = \"b\"\n", "legs.b.share",
        "[[use.legs]]\nname = \"a\"\nshare = 1\n[[use.legs]]\nname = \"b\"\nshare = 9\n")]
    [InlineData("use.legs = [{ name = \"a\" }, { name = \"b\" }]\n", "legs.b.share",
        "use.legs = [{ name = \"a\" }, { name = \"b\", share = 9 }]\n")]
    [InlineData("vehicle = {}\n", "vehicle.x", "vehicle = { x = 9 }\n")]
    [InlineData("vehicle.a = 1\n[x]\n", "vehicle.b", "vehicle.a = 1\nvehicle.b = 9\n[x]\n")]
    [InlineData("", "required_km", "required_km = 9\n")]
    [InlineData("# head\n[vehicle]\n", "trip.legs_km", "# head\n[vehicle]\n\n[trip]\nlegs_km = 9\n")]
    public void A_new_key_stands_where_a_reader_looks_for_it(string text, string path, string expected) =>
        Assert.Equal(expected, Set(text, path, TomlValue.Of(9)));

    [Theory]
    [InlineData("a = 1\nb = 2\nc = 3\n", "b", "a = 1\nc = 3\n")]
    [InlineData("a = 1\n# why\nb = 2 # really\nc = 3\n", "b", "a = 1\n# why\n# really\nc = 3\n")]
    [InlineData("b = \"\"\"\n# no comment\n\"\"\"\nc = 3\n", "b", "c = 3\n")]
    [InlineData("a = { x = 1, y = 2 }\n", "a.x", "a = { y = 2 }\n")]
    [InlineData("a = { x = 1, y = 2 }\n", "a.y", "a = { x = 1 }\n")]
    [InlineData("a = { x = 1 }\n", "a.x", "a = {}\n")]
    [InlineData("a = [1, 2, 3]\n", "a[1]", "a = [1, 3]\n")]
    [InlineData("a = [\n  1, # one\n  2, # two\n]\n", "a[1]", "a = [\n  1, # one\n # two\n]\n")]
    [InlineData("[a]\nx = 1\n\n[b]\ny = 1\n\n[c]\nz = 1\n", "b", "[a]\nx = 1\n\n[c]\nz = 1\n")]
    [InlineData("[a]\nx = 1\n\n[b]\ny = 1\n", "b", "[a]\nx = 1\n")]
    [InlineData("[[r]]\nn = 1\n[r.change]\nx = 1\n\n# two\n[[r]]\nn = 2\n", "r[0]", "# two\n[[r]]\nn = 2\n")]
    [InlineData("a = 1\n", "b.c", "a = 1\n")]
    public void What_is_taken_out_leaves_the_rest(string text, string path, string expected) =>
        Assert.Equal(expected, ScenarioEditor.Apply(text, ScenarioEdit.Remove(TomlPath.Of(path))));

    [Theory]
    [InlineData("[[r]]\nn = 1\n[r.change]\nx = 1\n\n[z]\n", "[[r]]\nn = 1\n[r.change]\nx = 1\n\n[[r]]\nn = 5\n\n[z]\n")]
    [InlineData("r = [{ n = 1 }]\n", "r = [{ n = 1 }, { n = 5 }]\n")]
    [InlineData("r = []\n", "r = [{ n = 5 }]\n")]
    [InlineData("x = 1\n", "x = 1\n\n[[r]]\nn = 5\n")]
    public void A_table_is_added_to_its_like(string text, string expected) =>
        Assert.Equal(expected,
            ScenarioEditor.Apply(text, ScenarioEdit.Append(TomlPath.Of("r"), TomlValue.TableOf(("n", TomlValue.Of(5))))));

    [Theory]
    [InlineData("a = 1\n", "a.b", "a is no table")]
    [InlineData("[[r]]\nn = 1\n", "r[3].n", "there is no r[3]")]
    [InlineData("a = [1\n", "b", "syntax of the file is broken")]
    [InlineData("a = 1\na = 2\n", "b", "syntax of the file is broken")]
    public void What_cannot_be_done_is_said(string text, string path, string reason) =>
        Assert.Contains(reason, Assert.Throws<EditException>(() => Set(text, path, TomlValue.Of(9))).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("vehicle.sprung_kg")]
    [InlineData("use.legs.gravel.share")]
    [InlineData("remedies[1].change.\"axle.wall_mm\"")]
    [InlineData("evidence.measured[0].value")]
    public void A_path_is_read_as_it_is_written(string path) => Assert.Equal(path, TomlPath.Of(path).ToString());

    [Fact]
    public void The_texts_of_numbers_are_read_with_them() => Assert.Equal(
        "200_000", ((TomlValue.Number)ScenarioEditor.Read("required_km = 200_000\n", TomlPath.Of("required_km"))!).Literal);

    private static string Set(string text, string path, TomlValue value) =>
        ScenarioEditor.Apply(text, ScenarioEdit.Set(TomlPath.Of(path), value));
}
