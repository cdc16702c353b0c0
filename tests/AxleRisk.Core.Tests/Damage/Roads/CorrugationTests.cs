using AxleRisk.Core.Damage.Roads;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

public class CorrugationTests
{
    private const double WavelengthM = 0.8;
    private const double RmsM = 0.008;

    [Fact]
    public void The_area_of_the_density_is_the_mean_square()
    {
        double area = Quadrature.Simpson(n => Corrugation.Psd(n, WavelengthM, RmsM), 0, 2.5, 2000);
        Near.Relative(RmsM * RmsM, area, 1e-10);
    }

    [Fact]
    public void The_density_peaks_at_one_over_the_wavelength_and_is_a_tenth_of_it_wide()
    {
        double peak = Corrugation.Psd(1 / WavelengthM, WavelengthM, RmsM);
        Near.Relative(Math.Exp(-0.5), Corrugation.Psd(1.1 / WavelengthM, WavelengthM, RmsM) / peak, 1e-10);
        Near.Relative(Math.Exp(-0.5), Corrugation.Psd(0.9 / WavelengthM, WavelengthM, RmsM) / peak, 1e-10);
    }
}
