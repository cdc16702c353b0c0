using AxleRisk.Core.Damage.Roads;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

public class RoadTests
{
    // ISO 8608:2016 table C.2, 1e-6 m^3, exact.
    [Theory]
    [InlineData('A', 16)]
    [InlineData('B', 64)]
    [InlineData('C', 256)]
    [InlineData('D', 1024)]
    [InlineData('E', 4096)]
    [InlineData('F', 16384)]
    [InlineData('G', 65536)]
    [InlineData('H', 262144)]
    public void A_class_has_the_mean_of_the_standard(char letter, double mean) =>
        Near.Relative(mean * 1e-6, RoadClass.Find(letter)!.MeanM3, 1e-14);

    // Upper limits from memory, 1e-6 m^3: twice the mean, and the next class's lower limit.
    [Theory]
    [InlineData('A', 32)]
    [InlineData('D', 2048)]
    [InlineData('G', 131072)]
    public void A_class_ends_where_the_next_begins(char letter, double upper)
    {
        Near.Relative(upper * 1e-6, RoadClass.Find(letter)!.UpperM3, 1e-14);
        Assert.Equal(RoadClass.Find(letter)!.UpperM3, RoadClass.Find((char)(letter + 1))!.LowerM3, 1e-18);
    }

    [Fact]
    public void The_first_class_is_open_below_and_the_last_above()
    {
        Assert.Equal(0, RoadClass.All[0].LowerM3);
        Assert.Equal(double.PositiveInfinity, RoadClass.All[^1].UpperM3);
    }

    [Fact]
    public void A_letter_is_found_in_either_case_and_others_are_not()
    {
        Assert.Equal('D', RoadClass.Find('d')!.Letter);
        Assert.Null(RoadClass.Find('I'));
        Assert.Null(RoadClass.Find('@'));
    }

    // RMS elevation over 0.011 to 2.83 cycles/m, mm: closed form, 7 digits; GB/T 7031 prints 3.81, 30.45 and 487.22 (from memory).
    [Theory]
    [InlineData('A', 3.806431)]
    [InlineData('D', 30.451449)]
    [InlineData('H', 487.223176)]
    public void The_elevation_over_the_standards_band_has_its_known_rms(char letter, double rmsMm)
    {
        double gd0 = RoadClass.Find(letter)!.MeanM3;
        double variance = Quadrature.OverLog(n => Road.Psd(n, gd0, 2), 0.011, 2.83, 20_001);
        Near.Relative(rmsMm, 1000 * Math.Sqrt(variance), 1e-6);
    }

    // Velocity density (2 pi n)^2 Gd(n), constant for waviness 2: closed form, 7 digits.
    [Theory]
    [InlineData('A', 6.316547e-6)]
    [InlineData('C', 1.010647e-4)]
    [InlineData('H', 1.034903e-1)]
    public void The_slope_density_is_flat_for_waviness_2(char letter, double expected)
    {
        foreach (double n in (double[])[0.02, 0.1, 1.7])
        {
            Near.Relative(expected, Math.Pow(2 * Math.PI * n, 2) * Road.Psd(n, RoadClass.Find(letter)!.MeanM3, 2), 1e-6);
        }
    }

    [Theory]
    [InlineData(1.5)]
    [InlineData(3)]
    public void The_waviness_tilts_the_density_about_the_reference_wavenumber(double waviness)
    {
        Assert.Equal(1e-3, Road.Psd(0.1, 1e-3, waviness), 1e-18);
        Near.Relative(1e-3 * Math.Pow(10, -waviness), Road.Psd(1, 1e-3, waviness), 1e-13);
    }
}
