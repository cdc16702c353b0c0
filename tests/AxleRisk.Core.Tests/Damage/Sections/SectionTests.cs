using AxleRisk.Core.Damage.Sections;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

public class SectionTests
{
    // cm^3, closed form; EN 10210-2 tables print these rounded (from memory).
    [Theory]
    [InlineData(114.3, 10, 78.681)]
    [InlineData(168.3, 10, 185.857)]
    [InlineData(139.7, 8, 103.119)]
    [InlineData(219.1, 12.5, 396.584)]
    public void A_tube_has_the_section_modulus_of_the_tables(double diameter, double wall, double cm3) =>
        Assert.Equal(cm3, SectionModulus.Tube(diameter, wall) / 1000, 5.1e-4);

    // Closed form, 9 digits.
    [Fact]
    public void A_box_has_its_section_modulus() => Near.Relative(155941.790, SectionModulus.Box(120, 140, 8), 1e-8);

    // 5 kN m on a tube 114.3 x 10: 63.547641131 MPa, closed form.
    [Fact]
    public void Stress_is_moment_over_section_modulus() =>
        Near.Relative(63.547641131, 20e3 * BendingStress.PerForce(1, 250, SectionModulus.Tube(114.3, 10)), 1e-9);

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void No_wall_left_is_no_section_and_infinite_stress(double wall)
    {
        Assert.Equal(0, SectionModulus.Tube(90, wall));
        Assert.Equal(0, SectionModulus.Box(90, 90, wall));
        Assert.Equal(double.PositiveInfinity, BendingStress.PerForce(1, 250, SectionModulus.Tube(90, wall)));
        Assert.Equal(double.PositiveInfinity, BendingStress.PerForce(1, 0, SectionModulus.Tube(90, wall)));
    }

    [Fact]
    public void A_wall_beyond_the_middle_is_the_solid_section()
    {
        Near.Relative(Math.PI * 90 * 90 * 90 / 32, SectionModulus.Tube(90, 60), 1e-14);
        Near.Relative(80 * 100 * 100 / 6.0, SectionModulus.Box(80, 100, 41), 1e-14);
        Near.Relative(80 * 100 * 100 / 6.0, SectionModulus.Box(80, 100, 1000), 1e-14);
        Near.Relative(0.5 * 0.8 * 0.8 / 6, SectionModulus.Box(0.5, 0.8, 0.5), 1e-14);
    }

    [Fact]
    public void The_side_of_the_arm_does_not_matter() =>
        Assert.Equal(BendingStress.PerForce(1, 30, 1000), BendingStress.PerForce(1, -30, 1000));

    [Theory]
    [InlineData(0, 5)]
    [InlineData(double.NaN, 5)]
    [InlineData(90, double.NaN)]
    public void A_section_that_is_none_is_refused(double outside, double wall)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SectionModulus.Tube(outside, wall));
        Assert.Throws<ArgumentOutOfRangeException>(() => SectionModulus.Box(outside, 90, wall));
        Assert.Throws<ArgumentOutOfRangeException>(() => SectionModulus.Box(90, outside, wall));
    }

    // As thin as a sheet, the box is b H^2 / 6 less (b - 2t)(H - 2t)^3 / (6 H): common practice, no source.
    [Fact]
    public void A_thin_wall_is_a_wall()
    {
        double inner = (120 - 0.6) * Math.Pow(140 - 0.6, 3);
        Near.Relative(((120 * Math.Pow(140, 3)) - inner) / (6 * 140), SectionModulus.Box(120, 140, 0.3), 1e-9);
    }
}
