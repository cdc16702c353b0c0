using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Spectra;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

public class DamageRateTests
{
    private static readonly SnConstants ClassE = SnCatalogue.Find("DNV-RP-C203", "E")!.Mean.Constants;

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void No_signal_does_no_damage_and_infinite_stress_does_infinite_damage(int method)
    {
        SpectralMoments some = CountingMethodTests.Block(10, 1, 20);
        Assert.Equal(0, DamageRate.PerSecond(default, 1, ClassE, (CountingMethod)method));
        Assert.Equal(0, DamageRate.PerSecond(some, 0, ClassE, (CountingMethod)method));
        Assert.Equal(double.PositiveInfinity, DamageRate.PerSecond(some, double.PositiveInfinity, ClassE, (CountingMethod)method));
        Assert.Equal(double.PositiveInfinity, DamageRate.PerSecond(default, double.PositiveInfinity, ClassE, (CountingMethod)method));
        Assert.True(double.IsNaN(DamageRate.PerSecond(some, double.NaN, ClassE, (CountingMethod)method)));
        Assert.True(double.IsNaN(DamageRate.PerSecond(some with { M0 = double.NaN }, 1, ClassE, (CountingMethod)method)));
    }

    [Fact]
    public void Moments_times_a_factor_or_the_factor_as_stress_scale_are_the_same()
    {
        SpectralMoments s = CountingMethodTests.Block(10, 1, 20);
        foreach (CountingMethod method in Enum.GetValues<CountingMethod>())
        {
            Near.Relative(DamageRate.PerSecond(s.Scale(3), 1, ClassE, method), DamageRate.PerSecond(s, 3, ClassE, method), 1e-12);
        }
    }

    [Fact]
    public void A_single_frequency_counts_as_narrow_band()
    {
        var line = new SpectralMoments(400, 400 * 1.3, 400 * 1.3 * 1.3, 400 * Math.Pow(1.3, 4));
        double narrow = DamageRate.PerSecond(line, 1, ClassE, CountingMethod.NarrowBand);
        Assert.True(narrow > 0);
        Assert.Equal(narrow, DamageRate.PerSecond(line, 1, ClassE, CountingMethod.Dirlik));
        Assert.Equal(narrow, DamageRate.PerSecond(line, 1, ClassE, CountingMethod.TovoBenasciutti));
    }

    // A block from f - h to f + h has 1 - a2 = 2/3 (h/f)^2: these lie on either side of the threshold of 1e-6.
    [Fact]
    public void The_fall_back_to_narrow_band_is_no_visible_step()
    {
        foreach (double half in (double[])[0.0061, 0.00613])
        {
            SpectralMoments s = CountingMethodTests.Block(1e5, 5 - half, 5 + half);
            double narrow = DamageRate.PerSecond(s, 1, ClassE, CountingMethod.NarrowBand);
            Near.Relative(narrow, DamageRate.PerSecond(s, 1, ClassE, CountingMethod.Dirlik), 1e-6);
            Near.Relative(narrow, DamageRate.PerSecond(s, 1, ClassE, CountingMethod.TovoBenasciutti), 1e-6);
        }
    }

    // Two or three lines anywhere in the band, of powers up to twelve decades apart: wilder than any road.
    [Property(MaxTest = 2000)]
    public Property Any_spectrum_and_any_scale_do_damage_that_is_a_number() => Prop.ForAll(
        Lines().ToArbitrary(), Gen.Choose(-300, 300).ToArbitrary(), (moments, decade) =>
            Enum.GetValues<CountingMethod>().All(m => DamageRate.PerSecond(moments, Math.Pow(10, decade), ClassE, m) >= 0));

    [Property(MaxTest = 500)]
    public Property The_narrow_band_bounds_tovo_and_benasciutti() => Prop.ForAll(
        Lines().ToArbitrary(), moments =>
            DamageRate.PerSecond(moments, 1, ClassE, CountingMethod.TovoBenasciutti)
                <= DamageRate.PerSecond(moments, 1, ClassE, CountingMethod.NarrowBand) * (1 + 1e-9));

    private static Gen<SpectralMoments> Lines() =>
        from count in Gen.Choose(1, 3)
        from powers in Gen.Choose(-6000, 6000).ArrayOf(count)
        from places in Gen.Choose(0, 1000).ArrayOf(count)
        select Enumerable.Range(0, count).Aggregate(default(SpectralMoments), (sum, i) => sum.Plus(Line(powers[i], places[i])));

    private static SpectralMoments Line(int power, int place)
    {
        double p = Math.Pow(10, power / 1000.0);
        double f = FrequencyGrid.LowestHz * Math.Pow(200, place / 1000.0);
        return new(p, p * f, p * f * f, p * f * f * f * f);
    }
}
