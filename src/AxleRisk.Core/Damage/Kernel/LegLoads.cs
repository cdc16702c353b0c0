using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Spectra;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>The force on one leg for one row: moments on its plain part and on its corrugated part.</summary>
/// <param name="Plain">Moments of the force off the corrugation, N^2 Hz^k.</param>
/// <param name="Corrugated">Moments on the corrugation; those of the plain part where there is none.</param>
/// <param name="CorrugatedShare">Share of the leg that is corrugated, 0 to 1.</param>
/// <param name="SpeedMPerS">Speed, m/s.</param>
internal readonly record struct LegLoads(SpectralMoments Plain, SpectralMoments Corrugated, double CorrugatedShare, double SpeedMPerS)
{
    /// <summary>The loads of a leg, from the ride spectrum of the row.</summary>
    public static LegLoads Of(DamageColumns columns, int leg, int row, ReadOnlySpan<double> ride)
    {
        LegColumns l = columns.Legs[leg];
        double speed = l.SpeedMPerS[row];
        double contact = columns.ContactLengthM[row];
        SpectralMoments plain = ForceSpectrum.OnRoad(ride, speed, contact, l.RoughnessM3[row], columns.Waviness[row]);
        double share = l.CorrugatedShare[row];
        SpectralMoments corrugated = share == 0
            ? plain
            : plain.Plus(ForceSpectrum.OnCorrugation(ride, speed, contact, l.CorrugationWavelengthM[row], l.CorrugationRmsM[row]));
        return new(plain, corrugated, share, speed);
    }

    /// <summary>Damage per km driven on the leg.</summary>
    public double DamagePerKm(double stressPerForce, SnConstants curve, CountingMethod method)
    {
        double perSecond = DamageRate.PerSecond(Plain, stressPerForce, curve, method);
        if (CorrugatedShare > 0 && double.IsFinite(perSecond))
        {
            double corrugated = DamageRate.PerSecond(Corrugated, stressPerForce, curve, method);
            perSecond = (1 - CorrugatedShare) * perSecond + CorrugatedShare * corrugated;
        }
        return perSecond * 1000 / SpeedMPerS;
    }
}
