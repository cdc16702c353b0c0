using System.Runtime.CompilerServices;

namespace AxleRisk.Core.Damage;

/// <summary>
/// When three eighths of the points do. The trapezoid rule's error falls as exp(-2 pi zeta / step), zeta the damping of a resonance, so both modes must
/// be damped (too much damping locks the two masses into one mode without any), must lie away from the grid's ends, and the enveloping must
/// not turn faster than the ends' weights follow. Within the rule the moments 0 to 2 differ from the full grid's by under 4e-4 and the
/// fourth by under 6e-4, their medians by under 2e-7 (measured over 10,346 random rides).
/// </summary>
internal static class ReducedGridRule
{
    /// <summary>The greatest contact length over speed, s: two waves over the contact at the highest frequency.</summary>
    public const double GreatestShiftSeconds = 2 / FrequencyGrid.HighestHz;

    private const float LeastDamping = 0.18f;
    private const float GreatestDamping = 1;
    private const double LowestBounceHz = 0.9;
    private const double HighestHopHz = 15;

    private static readonly float GreatestShift = (float)(GreatestShiftSeconds * MomentGrid.CentreHz);
    private static readonly float LowestSquared = Squared(LowestBounceHz);
    private static readonly float HighestSquared = Squared(HighestHopHz);

    /// <summary>Whether a row's ride and all its legs are smooth enough; not where anything is NaN.</summary>
    public static bool Admits(MomentInputs inputs, int row, int legs)
    {
        ref float ride = ref inputs.Ride(row);
        bool admits = Unsafe.Add(ref ride, RideCoefficients.LowerSquared * inputs.Stride) >= LowestSquared
            & Unsafe.Add(ref ride, RideCoefficients.UpperSquared * inputs.Stride) <= HighestSquared
            & Within(Unsafe.Add(ref ride, RideCoefficients.LowerDamping * inputs.Stride))
            & Within(Unsafe.Add(ref ride, RideCoefficients.UpperDamping * inputs.Stride));
        for (int leg = 0; leg < legs; leg++)
            admits &= inputs.Shift(leg, row) <= GreatestShift;
        return admits;
    }

    private static bool Within(float damping) =>
        damping >= 4 * LeastDamping * LeastDamping & damping <= 4 * GreatestDamping * GreatestDamping;

    private static float Squared(double hz) => (float)Math.Pow(hz / MomentGrid.CentreHz, 2);
}
