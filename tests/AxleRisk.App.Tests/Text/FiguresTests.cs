using AxleRisk.App.Text;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.App.Tests.Text;

public sealed class FiguresTests
{
    [Theory]
    [InlineData(77777, "77,777")]
    [InlineData(0.1 * 77777, "7,777.7")]
    [InlineData(150000, "150,000")]
    [InlineData(0.4, "0.4")]
    [InlineData(0.004, "0.004")]
    [InlineData(123456.789, "123,456.789")]
    [InlineData(0, "0")]
    [InlineData(1e300, "1E+300")]
    [InlineData(double.NaN, "-")]
    public void A_stated_number_keeps_all_of_its_digits(double x, string expected) => Assert.Equal(expected, Figures.Exact(x));

    [Theory]
    [InlineData(8_000.0 / 3, "2,667")]
    [InlineData(456.365805952681, "456")]
    [InlineData(1 / 3e6, "0")]
    public void A_number_of_more_digits_than_anybody_states_is_rounded(double x, string expected) =>
        Assert.Equal(expected, Figures.Exact(x));

    [Theory]
    [InlineData(0, "0")]
    [InlineData(0.25, "25.00 %")]
    [InlineData(0.0195, "1.950 %")]
    [InlineData(0.0004283, "0.0428 %")]
    [InlineData(7.3e-6, "7.3e-6")]
    [InlineData(double.NaN, "-")]
    public void Probabilities(double p, string expected) => Assert.Equal(expected, Figures.Probability(p));

    [Theory]
    [InlineData(0.43, "about 1 axle in 2.3 fails before this distance.")]
    [InlineData(0.0741, "about 1 axle in 13 fails before this distance.")]
    [InlineData(0.0735, "about 1 axle in 14 fails before this distance.")]
    [InlineData(3.07e-5, "about 1 axle in 33,000 fails before this distance.")]
    [InlineData(1.0002e-6, "about 1 axle in 1 million fails before this distance.")]
    [InlineData(0.0014, "about 1 axle in 710 fails before this distance.")]
    [InlineData(3e-8, "about 1 axle in 33 million fails before this distance.")]
    [InlineData(3.1e-10, "about 1 axle in 3.2 thousand million fails before this distance.")]
    [InlineData(3e-26, "fewer than 1 axle in ten thousand million fails before this distance; what the model leaves out will break one sooner.")]
    public void A_number_that_nobody_can_grasp_is_not_written_out(double p, string expected) =>
        Assert.Equal(expected, RiskText.InWords(new Interval(p, p, p)));

    // 1/0.00103 is 970.9: fewer than 1 in 970 is true, fewer than 1 in 980 would not be.
    [Theory]
    [InlineData(0.00103, "970")]
    [InlineData(1e-5, "100,000")]
    [InlineData(2.001e-7, "4.9 million")]
    public void A_bound_is_rounded_so_that_it_stays_true(double p, string expected) =>
        Assert.Equal(expected, Figures.OneIn(p, isBound: true));

    [Fact]
    public void What_was_not_resolved_is_a_bound()
    {
        var bound = new Interval(double.NaN, 0, 4e-13);
        Assert.Equal("< 4.0e-13", Figures.Probability(bound));
        Assert.Equal("below 4.0e-13, not resolved", RiskText.Answer(bound));
        Assert.Equal("fewer than 1 axle in ten thousand million fails before this distance; how many fewer was not resolved.",
            RiskText.InWords(bound));
        Assert.Equal("-", Figures.Probability(new Interval(double.NaN, double.NaN, double.NaN)));
    }

    [Theory]
    [InlineData(486_590.17, "486,600")]
    [InlineData(1_234_567, "1,235,000")]
    [InlineData(12.346, "12.35")]
    [InlineData(double.NaN, "-")]
    [InlineData(double.PositiveInfinity, "-")]
    public void Distances(double km, string expected) => Assert.Equal(expected, Figures.Km(km));

    [Theory]
    [InlineData(0.001, 0.002, "0.100 to 0.200 %")]
    [InlineData(4e-9, 2e-4, "4.0e-9 to 2.0e-4")]
    [InlineData(0, 3e-6, "0 to 3.0e-6")]
    public void Both_ends_of_a_range_are_written_alike(double low, double high, string expected) =>
        Assert.Equal(expected, Figures.ProbabilityRange(new Interval(low, low, high)));

    [Fact]
    public void A_zero_has_no_sign() => Assert.Equal("0.00 (0.00..0.01)", Figures.Index(new Interval(-0.001, -0.004, 0.01)));

    [Theory]
    [InlineData("short", 12, "short")]
    [InlineData("legs.village-track.speed_km_per_h", 16, "legs.vi..m_per_h")]
    public void A_long_name_loses_its_middle(string text, int width, string expected) =>
        Assert.Equal(expected, TextTable.Shorten(text, width));

    [Fact]
    public void Escape_sequences_of_a_scenario_are_not_printed() =>
        Assert.Equal("[31mred [0m", Printable.Line("\u001b[31mred\u009b[0m".Replace("\u009b", "\u001b")));
}
