using AxleRisk.App.Text;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.App.Tests.Text;

public class ChangeFiguresTests
{
    [Theory]
    [InlineData(0.0742, 0.0698, -0.0044, -0.0047, -0.0041, "7.42 -> 6.98 %, -0.44 (-0.47 to -0.41)")]
    [InlineData(0.07421, 0.07421, 0, 0, 0, "7.42 -> 7.42 %, 0 (0 to 0)")]
    [InlineData(0.0742, 0.07424, 0.00004, 0.00003, 0.00005, "7.420 -> 7.424 %, +0.004 (+0.003 to +0.005)")]
    [InlineData(0.5, 0.61, 0.11, 0.09, 0.13, "50.00 -> 61.00 %, +11.00 (+9.00 to +13.00)")]
    [InlineData(4.8e-6, 3.1e-6, -1.7e-6, -1.9e-6, -1.5e-6, "4.8e-6 -> 3.1e-6, -1.7e-6 (-1.9e-6 to -1.5e-6)")]
    [InlineData(double.NaN, 3.1e-6, double.NaN, 0, 1, "the change cannot be told")]
    public void A_change_is_told_in_one_line(double before, double after, double estimate, double low, double high, string line) =>
        Assert.Equal(line, ChangeFigures.Of(before, after, new Interval(estimate, low, high)));
}
