using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Tests.Files;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Editing;

public class InputRowsTests
{
    [Theory]
    [InlineData("warranty-clinic-van.toml")]
    [InlineData("broken-housing.toml")]
    [InlineData("desert-crossing.toml")]
    public void Every_input_of_a_scenario_has_its_row(string file)
    {
        string text = File.ReadAllText(Repository.PathTo("scenarios", file));
        Scenario scenario = ScenarioReader.Parse(text, file).Scenario;
        InputRow[] rows = [.. InputRows.Of(scenario, text).SelectMany(g => g.Rows)];
        Assert.Empty(scenario.Inputs.Select(i => i.Name).Except(rows.Select(r => r.Name)));
        Assert.Equal(scenario.Inputs.Count(i => i.Value is Value.Uncertain),
            rows.Count(r => r.Factor is not null && r.Quantity is not null));
        Assert.All(rows, r => Assert.True(r.Meaning.Length > 0 && r.Allowed.Length > 0 && r.ValueText.Length > 0, r.Name));
        Assert.Equal(rows.Length, rows.Select(r => r.Name).Distinct().Count());
    }

    [Fact]
    public void Rows_show_what_is_stated_as_it_is_stated()
    {
        string text = Good.With("required_km = 50000", "required_km = 50_000");
        IReadOnlyList<InputGroup> groups = InputRows.Of(Good.Parse(text).Scenario, text);
        InputRow Find(string name) => groups.SelectMany(g => g.Rows).Single(r => r.Name == name);
        Assert.Equal(("50_000", "km", true, false),
            (Find("required_km").ValueText, Find("required_km").Unit, Find("required_km").IsStated, Find("required_km").CanReset));
        Assert.Equal(("0", false, "0 (absent unless stated)"),
            (Find("vehicle.payload_kg").ValueText, Find("vehicle.payload_kg").IsStated, Find("vehicle.payload_kg").Default));
        Assert.Equal(("normal(mean 4, sd 0.4)", Knowledge.Unknown),
            (Find("vehicle.damper_n_s_per_mm").ValueText, Find("vehicle.damper_n_s_per_mm").Factor));
        Assert.Equal(("0.25", InputKind.Share), (Find("legs.gravel.share").ValueText, Find("legs.gravel.share").Kind));
        Assert.Equal("tube", Find("axle.shape").ValueText);
        Assert.Equal("Leg 2: gravel", groups.Single(g => g.Rows.Any(r => r.Name == "legs.gravel.share")).Title);
    }
}
