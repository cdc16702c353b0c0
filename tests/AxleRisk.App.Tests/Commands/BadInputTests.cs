using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>
/// Whatever is wrong with the input: exit code 2, one line a mistake on standard error, nothing on standard output, no trace.
/// </summary>
public sealed class BadInputTests
{
    private static readonly string Benchmark = File.ReadAllText(Cli.Shipped("benchmark-five-legs"));

    [Theory]
    [InlineData("--evaluations", "-3", "--evaluations must be a whole number from 1")]
    [InlineData("--evaluations", "1.5", "such as 100000 or 1e5, not \"1.5\"")]
    [InlineData("--evaluations", "1e13", "not \"1e13\"")]
    [InlineData("--seed", "banana", "--seed must be a whole number from 0")]
    [InlineData("--threads", "0", "--threads must be a whole number from 1")]
    [InlineData("--sampling", "roulette", "latin-hypercube")]
    [InlineData("--method", "guess", "conditional")]
    [InlineData("--distances", "1000,x", "--distances must be numbers above 0")]
    public void An_option_out_of_range_says_what_would_be_right(string option, string value, string expected) =>
        Refused(expected, "risk", Cli.Shipped("benchmark-five-legs"), option, value);

    [Fact]
    public void No_command_says_which_there_are() => Refused("a command is needed: check, base, risk, rank, ");

    [Fact]
    public void An_unknown_command_is_named() => Refused("no command rusk", "rusk", "x.toml");

    [Fact]
    public void A_missing_file_is_named() => Refused("nowhere.toml: there is no such file", "risk", "nowhere.toml");

    [Fact]
    public void An_empty_file_says_what_is_missing() => RefusedFile("", "(1,1): title is missing");

    [Fact]
    public void Half_a_file_names_the_place_where_it_ends() => RefusedFile(Benchmark[..700], "(14,27): ");

    [Fact]
    public void An_unknown_section_suggests_the_known_one() => RefusedFile(Benchmark.Replace("[fatigue]", "[fatige]"), "fatigue");

    [Theory]
    [InlineData("-4")]
    [InlineData("nan")]
    [InlineData("\"wide\"")]
    [InlineData("0")]
    [InlineData("inf")]
    public void A_value_that_is_no_positive_number_is_refused_at_its_place(string value)
    {
        string text = Benchmark.Replace("outside_diameter_mm = 95", "outside_diameter_mm = " + value);
        Assert.NotEqual(Benchmark, text);
        int line = text[..text.IndexOf("outside_diameter_mm", StringComparison.Ordinal)].Count(c => c == '\n') + 1;
        RefusedFile(text, $"case.toml({line},23): ");
    }

    [Fact]
    public void Several_mistakes_are_told_at_once()
    {
        string path = Cli.Temporary(Benchmark.Replace("tyre_damping_n_s_per_mm", "tyre_damping")
            .Replace("required_km = 50", "required_km = -50"));
        (int exit, _, string error) = Cli.Run("check", path);
        Assert.Equal(2, exit);
        Assert.Contains("required_km", error, StringComparison.Ordinal);
        Assert.Contains("tyre_damping_n_s_per_mm", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Random_bytes_are_refused()
    {
        string path = Cli.Temporary("");
        File.WriteAllBytes(path, [.. Enumerable.Range(0, 4000).Select(i => (byte)(i * i * 31 % 251))]);
        Refused("case.toml(1,", "risk", path);
    }

    [Fact]
    public void A_scenario_without_factors_cannot_be_ranked()
    {
        string certain = System.Text.RegularExpressions.Regex.Replace(
            Benchmark, @"\{[^}]*(median|mean) = ([0-9.]+)[^}]*\}", "$2").Replace("log10_life_scatter = 0.0", "log10_life_scatter = 0");
        Refused("nothing to rank", "rank", Cli.Temporary(certain));
    }

    [Fact]
    public void A_table_that_cannot_be_written_fails_the_run_and_leaves_nothing()
    {
        (int exit, string output, string error) = Cli.Run(
            "risk", Cli.Shipped("benchmark-five-legs"), "-n", "200", "--csv", "/nowhere/at/all.csv");
        Assert.Equal(1, exit);
        Assert.Empty(output);
        Assert.Contains("cannot write /nowhere/at/all.csv: there is no such folder", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_of_evaluations_may_have_a_power_of_ten() =>
        Assert.Contains("Run: 1,000 evaluations", Cli.Run("risk", Cli.Shipped("benchmark-five-legs"), "-n", "1e3").Out,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("77777", "Failure probability by 77,777 km")]
    [InlineData("0.004", "Failure probability by 0.004 km")]
    public void The_required_distance_is_told_as_it_was_stated(string km, string expected)
    {
        string text = Benchmark.Replace("required_km = 50_000", $"required_km = {km}")
            .Replace("required_km = 50000", $"required_km = {km}");
        Assert.NotEqual(Benchmark, text);
        Assert.Contains(expected, Cli.Run("risk", Cli.Temporary(text), "-n", "200", "--method", "crude").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_everything_is_certain_the_answer_has_no_error_of_sampling()
    {
        string certain = System.Text.RegularExpressions.Regex.Replace(
            Benchmark, @"\{[^}]*(median|mean) = ([0-9.]+)[^}]*\}", "$2").Replace("log10_life_scatter = 0.0", "log10_life_scatter = 0");
        string output = Cli.Run("risk", Cli.Temporary(certain), "-n", "2000").Out;
        Assert.Contains("95 % interval 0 to 0;", output, StringComparison.Ordinal);
        Assert.Contains("no such axle fails before this distance", output, StringComparison.Ordinal);
    }

    // /dev/full fails every write as a full disk does (Linux, full(4)).
    [Theory]
    [InlineData("--csv")]
    [InlineData("--out")]
    public void The_answer_is_told_although_a_file_of_it_cannot_be_written(string option)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "there is no such device");
        (int exit, string output, string error) = Cli.Run("risk", Cli.Shipped("benchmark-five-legs"), "-n", "200", option, "/dev/full");
        Assert.Equal(1, exit);
        Assert.Contains("Failure probability by 50,000 km", output, StringComparison.Ordinal);
        Assert.Equal("axlerisk: cannot write /dev/full: No space left on device\n", error);
    }

    private static void RefusedFile(string content, string expected) => Refused(expected, "check", Cli.Temporary(content));

    private static void Refused(string expected, params string[] args)
    {
        (int exit, string output, string error) = Cli.Run(args);
        Assert.Equal(2, exit);
        Assert.Empty(output);
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }
}
