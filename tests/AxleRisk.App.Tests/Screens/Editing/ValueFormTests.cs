using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Tests.Files;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Editing;

public sealed class ValueFormTests : IDisposable
{
    private readonly Scratch scratch = new();

    public static TheoryData<string> ContinuousFamilies => [.. StatedForms.Families.Where(f => f is not "choice" and not "sample")];

    [Theory]
    [MemberData(nameof(ContinuousFamilies))]
    public void Another_kind_keeps_median_and_spread(string family)
    {
        // Five figures in the fields; a lopsided source, and one for the families that can only be right-skewed.
        foreach (Distribution source in new Distribution[] { new Lognormal(6, 0.1), new Gumbel(6, 0.2), new Normal(6, 0.3) })
        {
            foreach (StatedForm form in StatedForms.Of(family))
            {
                ValueForm filled = Form("axle.wall_mm").WithSource(new Value.Uncertain(source, Knowledge.Unknown)).ToForm(form)!;
                FormCheck check = FormCheck.Of(filled, scratch.Open());
                Assert.True(check.IsRight, string.Join(" | ", check.Others.Concat(check.Reasons.Values)));
                Distribution made = ((Value.Uncertain)check.Value!).Distribution;
                Assert.Equal(source.Median, made.Median, 0.003 * source.Median);
                Assert.Equal(1, (made.Quantile(0.95) - made.Quantile(0.05)) / (source.Quantile(0.95) - source.Quantile(0.05)), 0.01);
                Assert.Equal(Knowledge.Unknown, ((Value.Uncertain)check.Value).Knowledge);
            }
        }
    }

    [Fact]
    public void A_number_becomes_a_choice_of_three_with_its_mean_and_spread()
    {
        ValueForm form = Form("axle.wall_mm").ToKind("choice")!;
        Assert.Equal(("5.5065, 6, 6.4935", "0.185, 0.63, 0.185"), (form["values"], form["weights"]));
        Value.Uncertain made = (Value.Uncertain)FormCheck.Of(form, scratch.Open()).Value!;

        // Keefer and Bodily 1983 (from memory): mean and variance of a normal distribution within 1 %.
        Assert.Equal(0.3, made.Distribution.StandardDeviation, 0.003);
    }

    [Fact]
    public void A_family_without_such_a_member_is_not_offered() =>
        Assert.Null(Form("fatigue.log10_life_scatter").ToKind("lognormal"));

    [Fact]
    public void The_form_of_a_stated_distribution_shows_it_as_it_is_stated()
    {
        ValueForm form = Form("vehicle.damper_n_s_per_mm");
        Assert.Equal(["mean=4", "sd=0.4", "min=", "max=", "nominal=4.2", "knowledge=unknown"],
            form.Fields.Select(f => $"{f.Name}={f.Text}"));
        Assert.True(FormCheck.Of(form, scratch.Open()).IsRight);
        EditedScenario scenario = scratch.Open();
        Assert.True(scenario.Apply(form.ToEdit(out _)!).IsAccepted);
        Assert.Equal(Good.Text, scenario.Text);
        Assert.Equal("0.10", Form("vehicle.sprung_kg")["sd_ln"]);
    }

    [Fact]
    public void Two_quantiles_are_four_fields()
    {
        ValueForm form = Form("axle.wall_mm").ToForm(StatedForms.Of("normal").Single(f => f.Required is ["quantiles"]))!;
        Assert.Equal(["p1=0.05", "x1=5.5065", "p2=0.95", "x2=6.4935"], form.Fields.Take(4).Select(f => $"{f.Name}={f.Text}"));
        FormCheck check = FormCheck.Of(form.With("x2", "5"), scratch.Open());
        Assert.Contains("x2", check.Reasons.Single().Key, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sd", "-1", "sd", "above 0")]
    [InlineData("sd", "0,4", "sd", "decimal point")]
    [InlineData("sd", "", "sd", "must be filled in")]
    [InlineData("nominal", "-2", "nominal", "a number above 0")]
    [InlineData("max", "3", "max", "must")]
    [InlineData("knowledge", "perhaps", "knowledge", "\"varies\" or \"unknown\"")]
    public void What_is_wrong_is_said_at_its_field(string field, string text, string at, string reason)
    {
        FormCheck check = FormCheck.Of(Form("vehicle.damper_n_s_per_mm").With("min", "2").With("max", "6").With(field, text) is var f
            && field == "max" ? f.With("min", "4") : f, scratch.Open());
        Assert.Contains(reason, check.Reasons[at], StringComparison.Ordinal);
        Assert.False(check.IsRight);
    }

    [Fact]
    public void What_belongs_to_no_field_is_said_of_the_form()
    {
        FormCheck check = FormCheck.Of(Form("vehicle.damper_n_s_per_mm").With("sd", "4"), scratch.Open());
        Assert.Empty(check.Reasons);
        Assert.Contains("truncate it with min", Assert.Single(check.Others), StringComparison.Ordinal);
    }

    [Fact]
    public void A_distribution_becomes_a_number_and_a_default_can_be_edited()
    {
        Assert.Equal("4.2", Form("vehicle.damper_n_s_per_mm").ToKind("number")!["value"]);
        ValueForm scatter = Form("fatigue.miner_sum");
        Assert.Equal(("lognormal", "1", "0.29356"), (scatter.Kind, scatter["median"], scatter["sd_ln"]));
        EditedScenario scenario = scratch.Open();
        Assert.True(scenario.Apply(scatter.With("median", "0.8").ToEdit(out _)!).IsAccepted);
        Assert.Contains("\n[fatigue]\nminer_sum = { distribution = \"lognormal\", median = 0.8, sd_ln = 0.29356 }\n", scenario.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_stated_that_nobody_asked_for()
    {
        // The reader cuts at the ends of what the input can be; that is no wish of the user's.
        EditedScenario scenario = EditedScenario.Open(scratch.PathTo());
        ValueForm wall = Form("axle.wall_mm").ToKind("normal")!;
        Assert.True(scenario.Apply(wall.ToEdit(out _)!).IsAccepted);
        Assert.Contains("wall_mm = { distribution = \"normal\", mean = 6, sd = 0.3 }\n", scenario.Text, StringComparison.Ordinal);
        ValueForm again = ValueForm.Of(scenario.Document!.Scenario.Inputs.Single(i => i.Name == "axle.wall_mm"), scenario.Text);
        ValueForm other = again.ToForm(StatedForms.Of("normal").Single(f => f.Required.Contains("cov")))!;
        Assert.True(scenario.Apply(other.ToEdit(out _)!).IsAccepted);
        Assert.Contains("wall_mm = { distribution = \"normal\", mean = 6, cov = 0.05 }\n", scenario.Text, StringComparison.Ordinal);

        // What the user states is written, and what stands there stays.
        Assert.True(scenario.Apply(other.With("knowledge", "unknown").ToEdit(out _)!).IsAccepted);
        Assert.Contains("cov = 0.05, knowledge = \"unknown\" }\n", scenario.Text, StringComparison.Ordinal);
        again = ValueForm.Of(scenario.Document!.Scenario.Inputs.Single(i => i.Name == "axle.wall_mm"), scenario.Text);
        Assert.True(scenario.Apply(again.With("knowledge", "varies").ToEdit(out _)!).IsAccepted);
        Assert.Contains("cov = 0.05, knowledge = \"varies\" }\n", scenario.Text, StringComparison.Ordinal);
    }

    public void Dispose() => scratch.Dispose();

    private ValueForm Form(string name)
    {
        EditedScenario scenario = scratch.Open();
        return ValueForm.Of(scenario.Document!.Scenario.Inputs.Single(i => i.Name == name), scenario.Text);
    }
}
