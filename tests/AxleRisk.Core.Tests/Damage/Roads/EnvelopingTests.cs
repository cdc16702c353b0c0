using AxleRisk.Core.Damage.Roads;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

public class EnvelopingTests
{
    [Fact]
    public void Long_waves_and_point_contact_pass_whole()
    {
        Assert.Equal(1, Enveloping.Gain(0, 0.2));
        Assert.Equal(1, Enveloping.Gain(3, 0));
        Assert.Equal(1, Enveloping.Gain(1e-6, 0.2), 1e-11);
    }

    [Fact]
    public void A_wave_as_long_as_the_contact_is_averaged_away() => Assert.Equal(0, Enveloping.Gain(5, 0.2), 1e-30);

    [Fact]
    public void The_gain_is_the_squared_mean_of_the_wave_over_the_contact()
    {
        double mean = Quadrature.Simpson(x => Math.Cos(2 * Math.PI * 1.7 * x), -0.1, 0.1, 200) / 0.2;
        Near.Relative(mean * mean, Enveloping.Gain(1.7, 0.2), 1e-9);
    }
}
