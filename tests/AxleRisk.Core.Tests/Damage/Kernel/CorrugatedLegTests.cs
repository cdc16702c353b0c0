using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Damage.Spectra;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

public class CorrugatedLegTests
{
    private static readonly RoadLeg Half = new(1, 256, 40, 0.5);

    [Fact]
    public void The_damage_of_a_leg_is_the_mean_over_its_plain_and_corrugated_parts()
    {
        double plain = Rows.DamagePerKm(new(), Half with { CorrugatedShare = 0 });
        double corrugated = Rows.DamagePerKm(new(), Half with { CorrugatedShare = 1 });
        Assert.True(corrugated > 2 * plain);
        Near.Relative(0.3 * corrugated + 0.7 * plain, Rows.DamagePerKm(new(), Half with { CorrugatedShare = 0.3 }), 1e-13);
    }

    [Fact]
    public void A_corrugation_without_height_changes_nothing() =>
        Near.Relative(
            Rows.DamagePerKm(new(), Half with { CorrugatedShare = 0 }), Rows.DamagePerKm(new(), Half with { RmsMm = 0 }), 1e-13);

    // A ride of unit gain passes the road as it is: the moments are the corrugation's own. The grid has 2.4 points to a standard deviation
    // of the Gaussian, where the trapezoid rule is good to 1e-4; its second moment is (1 + 0.1^2) times the centre's square.
    [Fact]
    public void A_ride_of_unit_gain_sees_the_corrugation_at_speed_over_wavelength()
    {
        SpectralMoments m = ForceSpectrum.OnCorrugation(FrequencyGrid.Weights, 12, 0, 0.8, 0.008);
        Near.Relative(0.008 * 0.008, m.M0, 1e-3);
        Near.Relative(12 / 0.8, m.M1 / m.M0, 1e-3);
        Near.Relative(12 / 0.8 * Math.Sqrt(1.01), m.UpCrossingsPerSecond, 1e-3);
    }

    [Theory]
    [InlineData(0.5, 6)]
    [InlineData(1.2, 9)]
    public void What_a_leg_adds_is_the_corrugation_of_its_own_wavelength_and_height(double wavelengthM, double rmsMm)
    {
        DamageColumns columns = Rows.Of([new()], Half with { WavelengthM = wavelengthM, RmsMm = rmsMm });
        LegDetail detail = ScalarKernel.LegDetails(columns, 0, [Rows.ClassE], CountingMethod.Dirlik)[0];
        var ride = new double[FrequencyGrid.Points];
        ForceSpectrum.FillRide(new(600, 90, 45e3, 4000, 300e3, 200, 0.5), ride);
        SpectralMoments force = ForceSpectrum.OnCorrugation(ride, 40 / 3.6, 0.2, wavelengthM, rmsMm / 1000);
        double stressPerForce = columns.StressPerForceMPaPerN[0];
        Near.Relative(
            stressPerForce * stressPerForce * force.M0, detail.Corrugated!.Moments.M0 - detail.Plain.Moments.M0, 1e-10);
    }

    [Fact]
    public void Details_show_both_parts_of_a_corrugated_leg_only()
    {
        LegDetail[] details = ScalarKernel.LegDetails(
            Rows.Of([new()], Half with { Share = 0.5 }, Half with { Share = 0.5, CorrugatedShare = 0 }),
            0, [Rows.ClassE], CountingMethod.Dirlik);
        Assert.True(details[0].Corrugated!.RmsMPa > details[0].Plain.RmsMPa);
        Assert.Null(details[1].Corrugated);
        Assert.Equal(details[0].Plain, details[1].Plain);
    }
}
