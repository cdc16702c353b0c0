using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Spectra;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>The further checked sections in plain scalar code, one row after the other.</summary>
internal static class ScalarSections
{
    /// <summary>Damage per km of the use, with that of strikes and with the damage ratios.</summary>
    /// <param name="columns">The input.</param>
    /// <param name="row">The row.</param>
    /// <param name="section">The place of the section among the further ones.</param>
    /// <param name="method">How cycles are counted.</param>
    public static double PerKm(DamageColumns columns, int row, int section, CountingMethod method)
    {
        (double stress, SnConstants curve) = StressAndCurve(columns, row, section);
        if (stress == 0)
        {
            return 0;
        }

        Span<double> ride = stackalloc double[FrequencyGrid.Points];
        bool isThrough = double.IsPositiveInfinity(stress);
        if (!isThrough)
        {
            ForceSpectrum.FillRide(columns.RideOf(row), ride);
        }

        double[] strikes = isThrough ? [] : ScalarFurther.StrikesPerKm(columns, row, stress, curve);
        double total = 0;
        for (int leg = 0; leg < columns.Legs.Length; leg++)
        {
            LegColumns l = columns.Legs[leg];
            double share = l.Share[row];
            if (share == 0)
            {
                continue; // a leg that is not driven adds nothing, however fatal it would be
            }

            double onLeg = isThrough ? double.PositiveInfinity
                : share * LegLoads.Of(columns, leg, row, ride).DamagePerKm(stress, curve, method);
            double all = columns.Layout.HasBumpStop && !isThrough ? onLeg + (share * strikes[leg]) : onLeg;
            total += l.DamageRatio.Length > 0 ? all * l.DamageRatio[row] : all;
        }

        return total;
    }

    /// <summary>The damage of one cycle of the force, without ratios.</summary>
    /// <param name="columns">The input.</param>
    /// <param name="row">The row.</param>
    /// <param name="section">The place of the section among the further ones.</param>
    /// <param name="rangeN">Its range, N.</param>
    public static double OfRange(DamageColumns columns, int row, int section, double rangeN)
    {
        (double stress, SnConstants curve) = StressAndCurve(columns, row, section);
        return MinerSum.OfRange(stress * rangeN, curve);
    }

    private static (double Stress, SnConstants Curve) StressAndCurve(DamageColumns columns, int row, int section)
    {
        SectionColumns of = columns.Sections[section + 1];
        ImmutableArray<SnCurve> curves = columns.Layout.Sections[section].Curves;
        SnCurve curve = curves[(int)of.Category[row]];
        return (Math.Abs(of.StressPerForceMPaPerN[row]) * curve.ThicknessFactor(of.ThicknessMm[row]), curve.Constants);
    }
}
