using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Files.Writing;

public class ToleranceTests
{
    // Cp = (U - L) / (6 sd): 6 +/- 0.4 at Cp 1.33 has sd 0.8 / 7.98 = 0.100251; at Cp 1 the limits lie at three sd. ISO 22514-2,
    // from memory.
    [Theory]
    [InlineData(6, 0.4, 0.4, 1.33, null, 6, 0.100251)]
    [InlineData(6, 0.3, 0.3, 1, null, 6, 0.1)]
    [InlineData(6, 0.2, 0.4, 1, null, 6.1, 0.1)]
    [InlineData(6, 0.6, 0.6, 2, 1.5, 5.85, 0.1)]
    public void A_tolerance_and_a_capability_make_a_normal_distribution(double nominal, double minus, double plus, double cp, double? cpk,
        double mean, double sd)
    {
        var tolerance = new Tolerance(nominal, minus, plus, cp, cpk);
        Assert.Null(tolerance.Problem);
        Assert.Equal(mean, tolerance.Mean, 9);
        Assert.Equal(sd, tolerance.StandardDeviation, 6);

        // The definition of Cpk, used the other way round.
        Assert.Equal(cpk ?? cp,
            Math.Min(tolerance.Mean - (nominal - minus), nominal + plus - tolerance.Mean) / (3 * tolerance.StandardDeviation), 9);
    }

    [Fact]
    public void It_is_read_as_a_truncated_normal_distribution_about_the_drawing()
    {
        string text = ScenarioEditor.Apply(Good.Text,
            ScenarioEdit.Set(TomlPath.Of("axle.wall_mm"), new Tolerance(6, 0.4, 0.4, 1.33).ToValue()));
        Assert.Contains("wall_mm = { distribution = \"normal\", mean = 6, sd = 0.1003, min = 5.6, max = 6.4 }", text, StringComparison.Ordinal);
        Assert.Equal(6, Good.Parse(text).Scenario.Inputs.Single(i => i.Name == "axle.wall_mm").Value.Nominal);
    }

    [Theory]
    [InlineData(6, -1, 1, 1, null, "not be below 0")]
    [InlineData(6, 0, 0, 1, null, "not both 0")]
    [InlineData(6, 1, 1, 0, null, "Cp must")]
    [InlineData(6, 1, 1, double.NaN, null, "Cp must")]
    [InlineData(6, 1, 1, 1, 1.2, "up to Cp (1)")]
    public void What_is_no_tolerance_is_said(double nominal, double minus, double plus, double cp, double? cpk, string problem) =>
        Assert.Contains(problem, new Tolerance(nominal, minus, plus, cp, cpk).Problem, StringComparison.Ordinal);

    [Fact]
    public void Keys_whose_default_says_the_same_are_left_out_and_those_that_stand_stay()
    {
        Assert.Equal(["distribution", "mean", "sd", "nominal", "knowledge"],
            new Tolerance(6, 0.2, 0.4, 1, Sorted: false).ToValue("unknown").Items.Select(i => i.Key));
        var before = (TomlValue.Table)ScenarioEditor.Read(
            """w = { distribution = "normal", mean = 6.00, sd = 0.1000012, nominal = 6.0, knowledge = "varies" }""", TomlPath.Of("w"))!;
        Assert.Equal("""{ distribution = "normal", mean = 6.00, sd = 0.1000012, min = 5.7, max = 6.3, nominal = 6.0, knowledge = "varies" }""",
            new Tolerance(6, 0.3, 0.3, 1).ToValue("varies", before).Write());
    }

    [Theory]
    [InlineData(7, 0.2, 0.2, 1.33, null, true, "tolerance 7 +0.2 -0.2, Cp 1.33 assumed, parts outside sorted out")]
    [InlineData(-1.5, 0, 0.25, 1, 0.9, false, "tolerance -1.5 +0.25 -0, Cp 1 Cpk 0.9 assumed, parts outside delivered too")]
    public void Its_note_tells_it_again(double nominal, double minus, double plus, double cp, double? cpk, bool sorted, string note)
    {
        var tolerance = new Tolerance(nominal, minus, plus, cp, cpk, sorted);
        Assert.Equal(note, tolerance.ToNote());
        Assert.Equal(tolerance, Tolerance.OfNote("drawing 12; " + note));
        Assert.Null(Tolerance.OfNote("drawing 12"));
        Assert.Equal(note, tolerance.Into(""));
        Assert.Equal("drawing 12; " + note, tolerance.Into("drawing 12"));
        Assert.Equal($"drawing 12; {note}; measured", tolerance.Into("drawing 12; tolerance 1 +1 -1, Cp 1 assumed, parts outside sorted out; measured"));
    }
}
