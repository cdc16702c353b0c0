using AxleRisk.Core.Damage.Rides;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// One event on the road, a pot-hole, a kerb, a ramp, a corner, as a single cycle of the force through the section about its static value.
/// </summary>
/// <param name="RangeN">The range of the force, N; of a moment the force that would make it.</param>
/// <param name="PeakN">The greatest force through the section, N.</param>
internal readonly record struct EventLoad(double RangeN, double PeakN)
{
    /// <summary>
    /// A load of the wheel: it swings by half the range to either side of the static load W while the wheel stays on the ground, and from
    /// nothing to the whole range where that is more than 2 W. The section takes what the wheel takes (no inertia outboard).
    /// </summary>
    /// <param name="columns">The vehicle.</param>
    /// <param name="row">The row.</param>
    /// <param name="times">The range over W.</param>
    public static EventLoad OfWheel(DamageColumns columns, int row, double times)
    {
        double wheel = (columns.SprungMassKg[row] + columns.UnsprungMassKg[row]) * RideLimits.Gravity;
        return new(times * wheel, StaticN(columns, row) + (Math.Max(times / 2, times - 1) * wheel));
    }

    /// <summary>A moment in the section, by half the range to either side of the static one.</summary>
    /// <param name="columns">The vehicle.</param>
    /// <param name="row">The row.</param>
    /// <param name="rangeKNm">Its range, kN m.</param>
    /// <param name="armMm">Lever arm of the wheel's load to the section, mm.</param>
    public static EventLoad OfMoment(DamageColumns columns, int row, double rangeKNm, double armMm)
    {
        double range = 1e6 * rangeKNm / Math.Abs(armMm);
        return new(range, StaticN(columns, row) + (range / 2));
    }

    private static double StaticN(DamageColumns columns, int row) =>
        (columns.SprungMassKg[row] + ((1 - columns.OutboardShare[row]) * columns.UnsprungMassKg[row])) * RideLimits.Gravity;
}
