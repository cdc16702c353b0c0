using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Reports.Charts;
using Xunit;

namespace AxleRisk.App.Tests.Reports;

public sealed class ChartTests
{
    private static readonly ChartAxis Axis = new("share", x => x.ToString("0.##"));

    public static TheoryData<string> Charts => ["rows", "curve", "density", "states"];

    [Theory]
    [MemberData(nameof(Charts))]
    public void The_same_chart_gives_the_same_bytes(string name)
    {
        Assert.Equal(Chart(name).Png(), Chart(name).Png());
        Assert.Equal(Chart(name).Svg(ChartWidth.Narrow, "a-").ToString(), Chart(name).Svg(ChartWidth.Narrow, "a-").ToString());
    }

    [Fact]
    public void A_label_is_drawn_in_the_picture_file()
    {
        // Without a font the drawing library leaves text out and says nothing.
        Assert.NotEqual(Rows("mass").Png(), Rows("mass ").Png()[..^1]);
        Assert.NotEqual(Rows("mass").Png(), Rows("wall").Png());
    }

    [Fact]
    public void A_narrow_chart_keeps_label_and_figure_apart()
    {
        var texts = Rows("legs.village-track.roughness_within_class_of_the_road").Svg(ChartWidth.Narrow, "a-").Descendants("text")
            .ToArray();
        double width = texts.Where(t => t.Value.StartsWith("legs", StringComparison.Ordinal) || t.Value == "12.3 % (11.9..12.8)")
            .Sum(t => double.Parse(t.Attribute("textLength")!.Value));
        Assert.InRange(width, 200, 350);
        Assert.Contains(texts, t => t.Value.StartsWith("legs", StringComparison.Ordinal)
            && t.Value.EndsWith("road", StringComparison.Ordinal));
    }

    [Fact]
    public void What_does_not_exist_is_not_drawn()
    {
        var nothing = new RowsChart([new ChartRow("a", "-", [new ChartMark(MarkShape.Dot, double.NaN)])], Axis);
        Assert.Contains(nothing.Svg(ChartWidth.Wide, "").Descendants("text"), t => t.Value == "a");
        var unseen = new CurveChart([], [], new CurvePoint(1000, new Interval(0, 0, 1e-5)), ["none"], Axis, Axis with { IsLog = true });
        Assert.Contains(unseen.Svg(ChartWidth.Wide, "").Descendants("text"), t => t.Value == "none");
    }

    // Shares of the steps of a normal density: its quantiles at 1, 2, 3 standard deviations, any table of the normal distribution.
    [Fact]
    public void A_density_has_the_shape_of_its_distribution()
    {
        var picture = DistributionPicture.Of(new Normal(10, 2), 10);
        double sum = picture.Heights.Sum();
        Assert.Equal(0.998, sum, 1e-9);
        Assert.Equal(0.5, picture.Nominal, 1e-12);
        Assert.Equal(picture.Heights.Max(), picture.Heights[29], 1e-12);
        double width = 2 * 3.090232306167813 / 60; // Phi^-1(0.999)
        Assert.Equal(0.3989422804014327 * width, picture.Heights[29], 2e-4);
    }

    [Fact]
    public void A_choice_is_drawn_state_by_state() =>
        Assert.Equal([0.2, 0.8], DistributionPicture.Of(new NumberChoice([0, 25], [1, 4]), 25).Heights);

    private static Chart Chart(string name) => name switch
    {
        "rows" => Rows("mass"),
        "curve" => new CurveChart(
            [.. Enumerable.Range(1, 20).Select(i => new CurvePoint(i, new Interval(i / 40.0, i / 50.0, i / 35.0)))],
            [new CurvePoint(0.5, new Interval(0.001, 0.0005, 0.002))], new CurvePoint(10, new Interval(0.25, 0.2, 0.3)), ["required"],
            Axis, Axis),
        "density" => DistributionPicture.Of(new Lognormal(1, 0.3), 1),
        _ => DistributionPicture.OfStates([0.2, 0.8], 1),
    };

    private static RowsChart Rows(string label) => new(
        [new ChartRow(label, "12.3 % (11.9..12.8)",
            [new ChartMark(MarkShape.Bar, new Interval(0.123, 0.119, 0.128)), new ChartMark(MarkShape.Ring, 0.2)])], Axis, 0.1);
}
