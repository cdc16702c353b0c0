using AxleRisk.Reports.Charts;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.App.Tests.Reports;

public sealed class AxisTicksTests
{
    [Theory]
    [InlineData(0, 0.2, 8, "0 0.05 0.1 0.15 0.2")]
    [InlineData(0, 300_000, 8, "0 50000 100000 150000 200000 250000 300000")]
    [InlineData(-0.013, 0.31, 8, "0 0.05 0.1 0.15 0.2 0.25 0.3")]
    public void Linear(double low, double high, int most, string expected) =>
        Assert.Equal(expected, string.Join(' ', AxisTicks.Linear(low, high, most).Select(t => t.ToString("0.######"))));

    [Theory]
    [InlineData(0.1, 3, 8, "0.1 0.2 0.5 1 2")]
    [InlineData(1e-9, 1, 5, "1E-09 1E-06 0.001 1")]
    public void Logarithmic(double low, double high, int most, string expected) =>
        Assert.Equal(expected, string.Join(' ', AxisTicks.Log(low, high, most).Select(t => t.ToString("G3"))));

    [Property(MaxTest = 200)]
    public bool Ticks_rise_inside_their_range_and_are_few(int seedLow, uint seedSpan)
    {
        (double low, double span) = (seedLow / 1000.0, 1e-6 + (seedSpan / 1000.0));
        return AreGood(AxisTicks.Linear(low, low + span, 8), low, low + span, 9)
            && AreGood(AxisTicks.Log(span, span * (2 + Math.Abs(low)), 8), span, span * (2 + Math.Abs(low)), 9);
    }

    private static bool AreGood(IReadOnlyList<double> ticks, double low, double high, int most)
    {
        double slack = 1e-6 * (high - low);
        return ticks.Count >= 1 && ticks.Count <= most && ticks.Zip(ticks.Skip(1), (a, b) => a < b).All(x => x) && ticks[0] >= low - slack
            && ticks[^1] <= high + slack;
    }

    [Fact]
    public void An_axis_without_length_has_its_one_value()
    {
        Assert.Equal([3.0], AxisTicks.Linear(3, 3, 8));
        Assert.Equal([150_000.0], AxisTicks.Log(150_000, 150_000, 8));
    }
}
