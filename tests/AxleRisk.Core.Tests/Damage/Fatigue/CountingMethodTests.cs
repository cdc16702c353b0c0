using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>
/// Two block spectra: narrow band (JCSS Probabilistic Model Code 3.12, annex B), Dirlik (1985; constants from memory) and Tovo and
/// Benasciutti (2005; from memory). Formula values recomputed, 9 digits; here to 1e-7. Damage per second times a, for N = a S^-m.
/// </summary>
public class CountingMethodTests
{
    // 10 MPa^2/Hz over 0 to 10 Hz; 60 over 1 to 2 Hz and 10 over 8 to 12 Hz.
    private static readonly SpectralMoments Flat = Block(10, 0, 10);
    private static readonly SpectralMoments TwoBlocks = Block(60, 1, 2).Plus(Block(10, 8, 12));

    [Theory]
    [InlineData(3, 1.73664301e5, 1.39090300e5, 1.40074841e5)]
    [InlineData(4, 7.39008345e6, 5.63856154e6, 5.50575020e6)]
    [InlineData(5, 3.47328602e8, 2.57590491e8, 2.42828061e8)]
    public void A_flat_spectrum_does_the_known_damage(double m, double narrowBand, double dirlik, double tovoBenasciutti) =>
        Check(Flat, m, narrowBand, dirlik, tovoBenasciutti);

    [Theory]
    [InlineData(3, 1.94782921e5, 1.23880626e5, 1.31125286e5)]
    [InlineData(4, 8.28876187e6, 4.72503215e6, 4.90736193e6)]
    [InlineData(5, 3.89565841e8, 2.08277439e8, 2.10488321e8)]
    public void Two_blocks_do_the_known_damage(double m, double narrowBand, double dirlik, double tovoBenasciutti) =>
        Check(TwoBlocks, m, narrowBand, dirlik, tovoBenasciutti);

    [Fact]
    public void The_constants_of_both_spectra_are_the_known_ones()
    {
        Near.Relative(Math.Sqrt(3) / 2, Flat.Alpha1, 1e-12);
        Near.Relative(Math.Sqrt(5) / 3, Flat.Alpha2, 1e-12);
        Near.Relative(6.4755952107, TwoBlocks.UpCrossingsPerSecond, 1e-10);
        Near.Relative(10.1557818316, TwoBlocks.PeaksPerSecond, 1e-10);
        Near.Relative(0.564814, TovoBenasciutti.Weight(Flat), 1e-6);
        Near.Relative(0.449283, TovoBenasciutti.Weight(TwoBlocks), 1e-6);
        CheckDirlik(new(0.11563929, 0.35238282, 0.53197789, 0.14454911, 0.56758061), Dirlik.From(Flat));
        CheckDirlik(new(0.10794545, 0.57752523, 0.31452932, 0.13493181, 0.53927500), Dirlik.From(TwoBlocks));
    }

    // 1000 MPa^2/Hz over 4.95 to 5.05 Hz.
    [Fact]
    public void All_methods_agree_within_1_percent_on_a_narrow_band()
    {
        foreach (CountingMethod method in Enum.GetValues<CountingMethod>())
        {
            Near.Relative(1.50400203e5, PerSecond(Block(1000, 4.95, 5.05), 3, method), method == CountingMethod.NarrowBand ? 1e-7 : 0.01);
        }
    }

    // Mean of the ranges is sqrt(2 pi) a2 sigma for any Gaussian signal; Dirlik's density has it within 0.3 %.
    [Fact]
    public void Dirliks_density_has_the_exact_mean_range()
    {
        foreach (SpectralMoments s in (SpectralMoments[])[Flat, TwoBlocks])
        {
            Near.Relative(Math.Sqrt(2 * Math.PI) * s.Alpha2 * s.Rms, PerSecond(s, 1, CountingMethod.Dirlik) / s.PeaksPerSecond, 0.003);
        }
    }

    private static void Check(SpectralMoments s, double m, double narrowBand, double dirlik, double tovoBenasciutti)
    {
        Near.Relative(narrowBand, PerSecond(s, m, CountingMethod.NarrowBand), 1e-7);
        Near.Relative(dirlik, PerSecond(s, m, CountingMethod.Dirlik), 1e-7);
        Near.Relative(tovoBenasciutti, PerSecond(s, m, CountingMethod.TovoBenasciutti), 1e-7);
    }

    private static void CheckDirlik(Dirlik expected, Dirlik actual)
    {
        Assert.Equal(expected.D1, actual.D1, 1e-8);
        Assert.Equal(expected.D2, actual.D2, 1e-8);
        Assert.Equal(expected.D3, actual.D3, 1e-8);
        Assert.Equal(expected.Q, actual.Q, 1e-8);
        Assert.Equal(expected.R, actual.R, 1e-8);
    }

    private static double PerSecond(SpectralMoments s, double m, CountingMethod method) =>
        DamageRate.PerSecond(s, 1, Curves.OneSlope(m), method);

    internal static SpectralMoments Block(double density, double from, double to)
    {
        double Moment(int k) => density * (Math.Pow(to, k + 1) - Math.Pow(from, k + 1)) / (k + 1);
        return new(Moment(0), Moment(1), Moment(2), Moment(4));
    }
}
