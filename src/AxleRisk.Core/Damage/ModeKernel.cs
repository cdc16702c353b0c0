namespace AxleRisk.Core.Damage;

/// <summary>
/// Rates of the modes beside plain fatigue, row by row: damage of bump-stop strikes, rate of first yield, life used up of the bearing. All
/// are per km of the use.
/// </summary>
/// <param name="modes">Which are on.</param>
/// <param name="curves">The mean S-N curves that <see cref="DamageColumns.Category"/> points into.</param>
internal sealed class ModeKernel(ModeSwitches modes, SnCurve[] curves)
{
    private readonly RideGains[] gains = new RideGains[FrequencyGrid.Points];

    /// <summary>Evaluates the first <paramref name="count"/> rows.</summary>
    /// <param name="columns">The input.</param>
    /// <param name="count">The number of rows.</param>
    /// <param name="damageByLeg">Plain fatigue damage per km of the use, by leg and row; the strikes' damage is added.</param>
    /// <param name="damagePerKm">Its sum over the legs, by row; likewise.</param>
    /// <param name="yieldPerKm">Takes the rate of first yield, 1/km; 0 where the mode is off.</param>
    /// <param name="bearingPerKm">Takes one over the bearing's rating life, 1/km; 0 where the mode is off.</param>
    public void Evaluate(
        DamageColumns columns, int count, double[][] damageByLeg, Span<double> damagePerKm, Span<double> yieldPerKm, Span<double> bearingPerKm)
    {
        for (int row = 0; row < count; row++)
        {
            RideParameters ride = ScalarKernel.RideOf(columns, row);
            ModeMoments.FillGains(ride, gains);
            RowLoads loads = new(ride, columns, row, modes, curves[(int)columns.Category[row]]);
            double total = 0;
            double yield = 0;
            double bearing = 0;
            for (int leg = 0; leg < columns.Legs.Length; leg++)
            {
                double share = columns.Legs[leg].Share[row];
                if (share == 0)
                {
                    total += damageByLeg[leg][row];
                    continue;
                }

                LegRates rates = OnLeg(columns, leg, row, loads);
                damageByLeg[leg][row] += share * rates.StrikeDamagePerKm;
                total += damageByLeg[leg][row];
                yield += share * rates.YieldPerKm;
                bearing += share * rates.BearingPower;
            }

            if (modes.BumpStop)
                damagePerKm[row] = total;
            yieldPerKm[row] = yield;
            bearingPerKm[row] = loads.BearingPerKm(bearing);
        }
    }

    private LegRates OnLeg(DamageColumns columns, int leg, int row, in RowLoads loads)
    {
        LegColumns l = columns.Legs[leg];
        double speed = l.SpeedMPerS[row];
        double contact = columns.ContactLengthM[row];
        ModeMoments plain = ModeMoments.OnRoad(gains, speed, contact, l.RoughnessM3[row], columns.Waviness[row]);
        LegRates rates = loads.On(plain, speed);
        double share = l.CorrugatedShare[row];
        if (share == 0)
            return rates;
        ModeMoments added = ModeMoments.OnCorrugation(gains, speed, contact, l.CorrugationWavelengthM[row], l.CorrugationRmsM[row]);
        return LegRates.Mix(rates, loads.On(plain.Plus(added), speed), share);
    }
}

/// <summary>Rates on one leg, per km driven on it.</summary>
/// <param name="StrikeDamagePerKm">Fatigue damage that bump-stop strikes add.</param>
/// <param name="YieldPerKm">Rate of first yield.</param>
/// <param name="BearingPower">Mean of the bearing load to the power of its life exponent, in units of the rating's.</param>
internal readonly record struct LegRates(double StrikeDamagePerKm, double YieldPerKm, double BearingPower)
{
    /// <summary>The rates where a share of the leg has the second ones.</summary>
    public static LegRates Mix(in LegRates plain, in LegRates other, double share) => new(
        Mix(plain.StrikeDamagePerKm, other.StrikeDamagePerKm, share), Mix(plain.YieldPerKm, other.YieldPerKm, share),
        Mix(plain.BearingPower, other.BearingPower, share));

    private static double Mix(double a, double b, double share) => share == 1 ? b : (1 - share) * a + share * b;
}
