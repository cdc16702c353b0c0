using AxleRisk.Core.Damage.BumpStops;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.Spectra;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// Strikes on the bump stop and the further modes of failure in plain scalar code, the twin of <see cref="FurtherRates"/>.
/// </summary>
internal static class ScalarFurther
{
    /// <summary>Adds the strikes of a row to its damage and fills the rates of its further modes.</summary>
    public static void AddRow(
        DamageColumns columns, int row, double stressPerForce, SnConstants curve, double[][] damageByLeg, Span<double> damagePerKm,
        ReadOnlySpan<double[]> further)
    {
        Span<RideGains> gains = stackalloc RideGains[FrequencyGrid.Points];
        ModeMoments.FillGains(columns.RideOf(row), gains);
        foreach (double[] rates in further)
        {
            rates[row] = 0;
        }

        double total = 0;
        for (int leg = 0; leg < columns.Legs.Length; leg++)
        {
            double share = columns.Legs[leg].Share[row];
            if (share != 0)
            {
                (LegLoad plain, LegLoad corrugated, double part) = LoadsOf(columns, leg, row, gains);
                damageByLeg[leg][row] += share * Mix(StrikesPerKm(plain, stressPerForce, curve),
                    StrikesPerKm(corrugated, stressPerForce, curve), part);
                for (int mode = 0; mode < further.Length; mode++)
                {
                    further[mode][row] += share * Mix(columns.Modes[mode].PerKm(plain, row), columns.Modes[mode].PerKm(corrugated, row),
                        part);
                }
            }

            total += damageByLeg[leg][row];
        }

        damagePerKm[row] = total;
    }

    /// <summary>The damage of strikes per km driven on each leg; zeros without a bump stop.</summary>
    public static double[] StrikesPerKm(DamageColumns columns, int row, double stressPerForce, SnConstants curve)
    {
        var perKm = new double[columns.Legs.Length];
        if (!columns.Layout.HasBumpStop)
        {
            return perKm;
        }

        Span<RideGains> gains = stackalloc RideGains[FrequencyGrid.Points];
        ModeMoments.FillGains(columns.RideOf(row), gains);
        for (int leg = 0; leg < perKm.Length; leg++)
        {
            (LegLoad plain, LegLoad corrugated, double part) = LoadsOf(columns, leg, row, gains);
            perKm[leg] = Mix(StrikesPerKm(plain, stressPerForce, curve), StrikesPerKm(corrugated, stressPerForce, curve), part);
        }

        return perKm;
    }

    /// <summary>What each leg of a row does to ride and suspension, off and on its corrugation.</summary>
    public static (LegLoad Plain, LegLoad Corrugated, double Share)[] LoadsOf(DamageColumns columns, int row)
    {
        Span<RideGains> gains = stackalloc RideGains[FrequencyGrid.Points];
        ModeMoments.FillGains(columns.RideOf(row), gains);
        var loads = new (LegLoad, LegLoad, double)[columns.Legs.Length];
        for (int leg = 0; leg < loads.Length; leg++)
        {
            loads[leg] = LoadsOf(columns, leg, row, gains);
        }

        return loads;
    }

    private static double StrikesPerKm(in LegLoad load, double stressPerForce, SnConstants curve) =>
        StrikeDamage.PerSecond(load.Ride, load.Moments, load.Stop, stressPerForce, curve) * 1000 / load.SpeedMPerS;

    private static (LegLoad Plain, LegLoad Corrugated, double Share) LoadsOf(DamageColumns columns, int leg, int row,
        ReadOnlySpan<RideGains> gains)
    {
        LegColumns l = columns.Legs[leg];
        double speed = l.SpeedMPerS[row];
        double contact = columns.ContactLengthM[row];
        ModeMoments road = ModeMoments.OnRoad(gains, speed, contact, l.RoughnessM3[row], columns.Waviness[row]);
        var plain = new LegLoad(columns.RideOf(row), road, columns.StopOf(row), speed);
        double share = l.CorrugatedShare[row];
        return share == 0
            ? (plain, plain, 0)
            : (plain, plain with
            {
                Moments = road.Plus(ModeMoments.OnCorrugation(gains, speed, contact, l.CorrugationWavelengthM[row],
                l.CorrugationRmsM[row]))
            }, share);
    }

    private static double Mix(double plain, double corrugated, double share) =>
        share == 0 ? plain : share == 1 ? corrugated : (1 - share) * plain + share * corrugated;
}
