using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>
/// Damage over two slopes: JCSS Probabilistic Model Code 3.12, annex B, on DNV's design curves in air; the closed form recomputed and
/// equal to quadrature to 1e-12. Here to 1e-8 (the digits given).
/// </summary>
public class WeibullRangesTests
{
    private static SnConstants Dnv(string category) => SnCatalogue.Find("DNV-RP-C203", category)!.Constants;

    private static SnConstants OneSlope(SnConstants c) => new([c.Pieces[0] with { FromMPa = 0 }]);

    [Fact]
    public void The_two_slopes_of_class_D_meet_at_52_60_MPa() => Near.Relative(52.601727, Dnv("D").Pieces[0].FromMPa, 1e-7);

    [Theory]
    [InlineData(25, 2.577396255529e-6, 2.540020081899e-6)]
    [InlineData(12, 2.850394066915e-7, 2.192851572699e-7)]
    public void Rayleigh_ranges_at_8_per_second_do_the_known_damage(double sigma, double oneSlope, double twoSlopes)
    {
        Near.Relative(oneSlope, 8 * Rayleigh.DamagePerCycle(sigma, OneSlope(Dnv("D"))), 1e-8);
        Near.Relative(twoSlopes, 8 * Rayleigh.DamagePerCycle(sigma, Dnv("D")), 1e-8);
    }

    [Fact]
    public void Long_term_weibull_ranges_do_the_known_damage()
    {
        double q = 200 / Math.Log(1e8);
        Near.Relative(0.52641009636, 1e8 * WeibullRanges.DamagePerCycle(q, 1, OneSlope(Dnv("D"))), 1e-8);
        Near.Relative(0.31139098194, 1e8 * WeibullRanges.DamagePerCycle(q, 1, Dnv("D")), 1e-8);
        Near.Relative(0.14805962665, 1e8 * WeibullRanges.DamagePerCycle(270 / Math.Pow(Math.Log(1e8), 1 / 0.9), 0.9, Dnv("C")), 1e-8);
    }

    // Scales from far below the knee to far above, where the code changes from one form to the other.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void The_closed_form_is_the_integral_over_cut_off_and_knee(double shape)
    {
        SnCurve curve = SnCatalogue.Find("EN 1993-1-9", "71")!;
        SnConstants c = curve.Constants;
        double knee = curve.KneesMPa[0];
        foreach (double q in (double[])[8, 28, 28.8, 40, 52, 53, 90, 400])
        {
            double Weighted(double s) =>
                shape / q * Math.Pow(s / q, shape - 1) * Math.Exp(-Math.Pow(s / q, shape)) / curve.CyclesToFailure(s);
            double integral = Quadrature.Simpson(Weighted, curve.CutOffMPa * (1 + 1e-15), knee * (1 - 1e-15), 4000)
                + Quadrature.Simpson(Weighted, knee, knee + 60 * q, 20_000);
            Near.Relative(integral, WeibullRanges.DamagePerCycle(q, shape, c), 1e-9);
        }
    }

    [Fact]
    public void Slopes_that_are_not_whole_lie_between_their_neighbours()
    {
        double Damage(double m) => Rayleigh.DamagePerCycle(30, Curves.TwoSlopes(m, Math.Pow(50, -m), m + 2, Math.Pow(50, -m - 2), 50, 0));
        foreach (double m in (double[])[3, 3.5, 4])
        {
            Near.Relative(Math.Sqrt(Damage(m - 0.001) * Damage(m + 0.001)), Damage(m), 1e-6);
        }
    }

    [Fact]
    public void Ranges_of_any_size_do_damage_that_is_a_number()
    {
        for (double q = 1e-300; q < 1e300; q *= 1e3)
        {
            foreach (double shape in (double[])[1, 2])
            {
                double d = WeibullRanges.DamagePerCycle(q, shape, SnCatalogue.Find("EN 1993-1-9", "71")!.Constants);
                Assert.True(d >= 0, $"{q:E} {shape}: {d}");
                Assert.True(d >= WeibullRanges.DamagePerCycle(q / 2, shape, SnCatalogue.Find("EN 1993-1-9", "71")!.Constants));
            }
        }
    }

    // Three slopes and a cut-off, none of the slopes a whole number.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Three_lines_are_integrated_as_two(double shape)
    {
        SnCurve curve = Curves.Of(25, new(3.3, 12.2), new(4.7, 14.9), new(7.1, 18.9));
        (double first, double second) = (curve.KneesMPa[0], curve.KneesMPa[1]);
        Assert.True(first > second && second > 25);
        foreach (double q in (double[])[8, 30, 60, 200, 900])
        {
            double Weighted(double s) =>
                shape / q * Math.Pow(s / q, shape - 1) * Math.Exp(-Math.Pow(s / q, shape)) / curve.CyclesToFailure(s);
            double integral = Quadrature.Simpson(Weighted, 25 * (1 + 1e-15), second * (1 - 1e-15), 4000)
                + Quadrature.Simpson(Weighted, second, first * (1 - 1e-15), 4000)
                + Quadrature.Simpson(Weighted, first, first + 60 * q, 20_000);
            Near.Relative(integral, WeibullRanges.DamagePerCycle(q, shape, curve.Constants), 1e-9);
        }
    }
}
