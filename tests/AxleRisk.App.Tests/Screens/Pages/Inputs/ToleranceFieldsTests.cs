using AxleRisk.App.Screens.Pages.Inputs;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Pages.Inputs;

/// <summary>The tolerance a form opens with.</summary>
public sealed class ToleranceFieldsTests
{
    // normal(mean 7, sd 0.21, min 6.37): the mean of what is not cut off is 7.0004, which no drawing states. 3 x 0.21 x 1.33 is 0.8379.
    [Fact]
    public void A_starting_wall_opens_with_the_figures_of_a_drawing_and_loses_its_mark()
    {
        string text = NewScenario.Text(StartingPoint.First);
        Input wall = ScenarioReader.Parse(text, "a.toml").Scenario.Find(Quantities.Wall)!;
        var fields = new ToleranceFields(wall, text);
        Assert.Equal(["7", "0.8379", "0.8379"], fields.Fields.Take(3).Select(f => f.Text));
        Assert.True(fields.Set(ToleranceFields.Plus, "0.4"));
        string after = ScenarioEditor.Apply(text, fields.Edit()!);
        Assert.Contains("wall_mm = { distribution = \"normal\", mean = 7, sd = 0.1003 } # tolerance 7 +0.4 -0.4, Cp 1.33 assumed, parts outside delivered too\n",
            after, StringComparison.Ordinal);
    }
}
