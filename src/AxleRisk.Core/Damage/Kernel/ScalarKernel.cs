using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Spectra;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// The damage model in plain scalar code, one row after the other: what faster kernels are tested against. It allocates nothing and
/// trusts its input; a row's answer does not depend on its place.
/// </summary>
internal static class ScalarKernel
{
    /// <summary>Damage per km of the use for the first <paramref name="count"/> rows.</summary>
    /// <param name="columns">The input.</param>
    /// <param name="count">How many rows.</param>
    /// <param name="curves">The mean S-N curves that <see cref="DamageColumns.Category"/> points into.</param>
    /// <param name="method">How cycles are counted.</param>
    /// <param name="damageByLeg">
    /// Filled by leg and row with what the leg adds per km of the use: its share times the damage per km on it.
    /// </param>
    /// <param name="damagePerKm">Filled with the sum over the legs. Infinite where the stress per force is.</param>
    /// <param name="further">Filled by row with the damage of each further section per km of the use, and with what each further mode
    /// uses up.</param>
    public static void Evaluate(
        DamageColumns columns, int count, ReadOnlySpan<SnCurve> curves, CountingMethod method, double[][] damageByLeg,
        Span<double> damagePerKm, ReadOnlySpan<double[]> further = default)
    {
        for (int row = 0; row < count; row++)
        {
            EvaluateRow(columns, row, curves, method, damageByLeg, damagePerKm, further);
        }
    }

    /// <summary>One row of <see cref="Evaluate"/>.</summary>
    public static void EvaluateRow(
        DamageColumns columns, int row, ReadOnlySpan<SnCurve> curves, CountingMethod method, double[][] damageByLeg,
        Span<double> damagePerKm, ReadOnlySpan<double[]> further)
    {
        Span<double> ride = stackalloc double[FrequencyGrid.Points];
        ForceSpectrum.FillRide(columns.RideOf(row), ride);
        SnCurve curve = curves[(int)columns.Category[row]];
        SnConstants constants = curve.Constants;
        double stress = StressPerForce(columns, row, curve);
        double total = 0;
        for (int leg = 0; leg < columns.Legs.Length; leg++)
        {
            double onLeg = LegLoads.Of(columns, leg, row, ride).DamagePerKm(stress, constants, method);
            double part = OfUse(columns.Legs[leg].Share[row], onLeg);
            damageByLeg[leg][row] = part;
            total += part;
        }
        damagePerKm[row] = total;
        if (columns.Layout.HasMore)
        {
            ScalarFurther.AddRow(
                columns, row, stress, constants, damageByLeg, damagePerKm,
                further.IsEmpty ? further : further[columns.Layout.Sections.Length..]);
        }

        for (int section = 0; section < Math.Min(further.Length, columns.Layout.Sections.Length); section++)
        {
            further[section][row] = ScalarSections.PerKm(columns, row, section, method);
        }
    }

    /// <summary>
    /// Stress and damage leg by leg for one row; without strikes on a bump stop the damage is that of <see cref="Evaluate"/> to
    /// the last bit.
    /// </summary>
    /// <param name="columns">The input.</param>
    /// <param name="row">The row.</param>
    /// <param name="curves">The mean S-N curves.</param>
    /// <param name="method">How cycles are counted.</param>
    /// <param name="strikes">Whether the damage of strikes is in.</param>
    public static LegDetail[] LegDetails(DamageColumns columns, int row, ReadOnlySpan<SnCurve> curves, CountingMethod method,
        bool strikes = true)
    {
        Span<double> ride = stackalloc double[FrequencyGrid.Points];
        ForceSpectrum.FillRide(columns.RideOf(row), ride);
        SnCurve curve = curves[(int)columns.Category[row]];
        SnConstants constants = curve.Constants;
        double stress = StressPerForce(columns, row, curve);
        double[] added = strikes ? ScalarFurther.StrikesPerKm(columns, row, stress, constants) : new double[columns.Legs.Length];
        var details = new LegDetail[columns.Legs.Length];
        for (int leg = 0; leg < details.Length; leg++)
        {
            LegLoads loads = LegLoads.Of(columns, leg, row, ride);
            double onLeg = loads.DamagePerKm(stress, constants, method) + added[leg];
            details[leg] = new(
                StressSummary.Of(loads.Plain, stress),
                loads.CorrugatedShare > 0 ? StressSummary.Of(loads.Corrugated, stress) : null,
                onLeg, OfUse(columns.Legs[leg].Share[row], onLeg));
        }
        return details;
    }

    private static double StressPerForce(DamageColumns columns, int row, SnCurve curve) =>
        Math.Abs(columns.StressPerForceMPaPerN[row]) * curve.ThicknessFactor(columns.ThicknessMm[row]);

    // A leg that is not driven adds nothing, however fatal it would be.
    private static double OfUse(double share, double damagePerKm) => share == 0 ? 0 : share * damagePerKm;
}
