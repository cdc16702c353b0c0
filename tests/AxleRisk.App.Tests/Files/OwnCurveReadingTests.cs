using AxleRisk.App.Tests.Commands;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>An S-N curve of the user's own in a scenario file.</summary>
public class OwnCurveReadingTests
{
    private const string Detail = "catalogue = \"DNV-RP-C203\"\ncategory = \"E\"";

    private const string Lines = "slopes = [3, 5]\nlog10_a = [12.0, 15.4]\n";
    private const string Points = "cycles = [1e4, 1e6, 1e8]\nrange_mpa = [500, 110, 45]\n";
    private const string Rest = "stated_as = 'mean'\nsd_log10_n = 0.15\nsource = 'own tests, report 12'";

    [Fact]
    public void Lines_are_taken_as_stated_and_bring_their_scatter()
    {
        Scenario scenario = Good.Parse(With(Lines + Rest)).Scenario;
        Assert.True(scenario.Detail.IsOwn);
        Assert.Equal([3, 5], scenario.Detail.Own!.Slopes.AsEnumerable());
        Assert.Equal([12.0, 15.4], scenario.Detail.Own.Log10A.AsEnumerable());
        Assert.Equal(0, scenario.Detail.Own.DeviationsBelowMean);
        Input scatter = scenario.Find(Quantities.LifeScatter)!;
        Assert.Equal(0.15, Assert.IsType<Normal>(Assert.IsType<Value.Uncertain>(scatter.Value).Distribution).StandardDeviation);
        Assert.Equal("standard deviation 0.15 of log10 N: [detail.curve]", scatter.DefaultSource);
    }

    // Through (1e4, 500), (1e6, 110), (1e8, 45): slopes ln 100 / ln(500/110) and ln 100 / ln(110/45), by hand; the points lie on the curve.
    [Fact]
    public void Points_are_joined_by_lines()
    {
        OwnCurve own = Good.Parse(With(Points + Rest)).Scenario.Detail.Own!;
        Assert.Equal(3.041, own.Slopes[0], 0.001);
        Assert.Equal(5.152, own.Slopes[1], 0.001);
        Core.Damage.Fatigue.SnCurve curve = DetailCurves.Of(own);
        (double Range, double Cycles)[] points = [(500, 1e4), (110, 1e6), (45, 1e8)];
        Assert.All(points, p => Assert.Equal(p.Cycles, curve.CyclesToFailure(p.Range), 1e-9 * p.Cycles));
        Assert.Equal(110, Assert.Single(curve.KneesMPa), 1e-9);
    }

    // A design curve lies so many standard deviations below the mean, which lives are on.
    [Theory]
    [InlineData("", 0.3)]
    [InlineData("design_below_mean = 1.645", 0.24675)]
    public void A_design_curve_is_raised_to_the_mean(string below, double raised)
    {
        OwnCurve own = Good.Parse(With(Lines + Rest.Replace("'mean'", "'design'") + "\n" + below)).Scenario.Detail.Own!;
        Assert.Equal(12 + raised, DetailCurves.Of(own).Mean.Lines[0].Log10A, 1e-12);
    }

    [Fact]
    public void Beside_a_catalogue_it_is_checked_and_not_in_force()
    {
        Scenario scenario = Good.Parse(Good.With(Detail, $"{Detail}\n[detail.curve]\n{Lines}{Rest}")).Scenario;
        Assert.False(scenario.Detail.IsOwn);
        Assert.Equal(["E"], scenario.Detail.Categories.AsEnumerable());
        Assert.Equal(Quantities.LifeScatter.DefaultSource, scenario.Find(Quantities.LifeScatter)!.DefaultSource);
        Assert.Single(Good.ErrorsOf(Good.With(Detail, $"{Detail}\n[detail.curve]\n{Lines}{Rest.Replace("0.15", "0")}")));
    }

    [Theory]
    [InlineData(Lines, "", "a.toml(18,1): detail.curve.slopes and log10_a, or cycles and range_mpa, must be stated, there is neither")]
    [InlineData(Lines, Lines + Points, "a.toml(18,1): detail.curve.slopes and log10_a, or cycles and range_mpa, must be stated, not both")]
    [InlineData("log10_a = [12.0, 15.4]\n", "", "a.toml(18,1): detail.curve.log10_a is missing")]
    [InlineData("[12.0, 15.4]", "[12.0]", "a.toml(20,11): detail.curve.log10_a must be as many as slopes: 2, not 1")]
    [InlineData("[3, 5]", "[3, 5, 7, 9]", "a.toml(19,10): detail.curve.slopes must be 1 to 3 slopes m, each above 0 and up to 30, not an array")]
    [InlineData("[3, 5]", "[3, 3]",
        "a.toml(19,10): detail.curve.slopes: the lines 1 and 2 do not meet at a stress range from 0.001 to 100000 MPa")]
    [InlineData(Lines, "slopes = [3, 5, 8]\nlog10_a = [12.0, 15.4, 22]\n",
        "a.toml(19,10): detail.curve.slopes: the knees must fall, and lines 2 and 3 meet at 158.5 MPa, those before at 50.12")]
    [InlineData(Lines, "cycles = [1e4, 1e3]\nrange_mpa = [500, 110]\n",
        "a.toml(19,10): detail.curve.cycles must rise from point to point, not go from 10000 to 1000")]
    [InlineData(Lines, "cycles = [1e4, 1e6]\nrange_mpa = [110, 500]\n",
        "a.toml(20,13): detail.curve.range_mpa must fall from point to point, not go from 110 to 500")]
    [InlineData(Lines, Lines + "cut_off_mpa = 60\n",
        "a.toml(21,15): detail.curve.cut_off_mpa must not be above the last knee, 50.1187 MPa, not 60")]
    [InlineData("'mean'", "'median'", "a.toml(21,13): detail.curve.stated_as must be \"mean\" or \"design\", not \"median\"")]
    [InlineData("sd_log10_n = 0.15\n", "", "a.toml(18,1): detail.curve.sd_log10_n is missing")]
    [InlineData("sd_log10_n = 0.15", "sd_log10_n = 0.15\ndesign_below_mean = 2",
        "a.toml(23,1): detail.curve.design_below_mean belongs to a curve stated as \"design\"")]
    [InlineData("'own tests, report 12'", "''", "a.toml(23,10): detail.curve.source must be one line of up to 200 characters, such as own tests of 2024, report 12; it is empty")]
    public void A_wrong_curve_is_named(string old, string replacement, string expected) =>
        Assert.Equal([expected], Good.ErrorsOf(With((Lines + Rest).Replace(old, replacement))));

    [Theory]
    [InlineData("catalogue = 'own'", "a.toml(17,13): a curve of your own must be stated under [detail.curve]")]
    [InlineData("catalogue = 'own'\ncategory = 'E'\n[detail.curve]\n" + Lines + Rest,
        "a.toml(18,1): detail.category does not belong to a curve of your own: leave it out, or name a catalogue")]
    [InlineData("catalogue = 'own'\nenvironment = 'air'\n[detail.curve]\n" + Lines + Rest,
        "a.toml(18,1): detail.environment does not belong to a curve of your own: leave it out, or name a catalogue")]
    public void What_does_not_go_with_it_is_named(string detail, string expected) =>
        Assert.Equal([expected], Good.ErrorsOf(Good.With(Detail, detail)));

    [Fact]
    public void No_remedy_changes_its_category() =>
        Assert.Equal(
            ["a.toml(39,1): detail.category cannot be changed: the S-N curve is the scenario's own"],
            Good.ErrorsOf(With(Lines + Rest) + "[[remedies]]\nname = 'x'\n[remedies.change]\n\"detail.category\" = 'D'\n"));

    // Every answer carries where the curve comes from.
    [Theory]
    [InlineData("check", "S-N curve of your own (detail.curve): mean curve, slopes 3 and 5, knee at 50.12 MPa, standard deviation 0.15 of log10 N; own tests, report 12")]
    [InlineData("base", "S-N curve of the scenario's own (mean curve, slopes 3 and 5, knee at 50.12 MPa, standard deviation 0.15 of log10 N): own tests, report 12")]
    [InlineData("risk", "S-N curve of the scenario's own (mean curve, slopes 3 and 5, knee at 50.12 MPa, standard deviation 0.15 of log10 N): own tests, report 12")]
    public void Its_source_is_printed(string command, string expected)
    {
        string file = Cli.Temporary(With(Lines + Rest));
        string output = Cli.Run([command, file, .. command == "risk" ? new[] { "-n", "1024" } : []]).Out;
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.Contains(expected, string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
        string json = Cli.Run([command, file, "--json", .. command == "risk" ? new[] { "-n", "1024" } : []]).Out;
        Assert.Contains("own tests, report 12", json);
    }

    private static string With(string curve) => Good.With(Detail, $"catalogue = \"own\"\n[detail.curve]\n{curve}");
}
