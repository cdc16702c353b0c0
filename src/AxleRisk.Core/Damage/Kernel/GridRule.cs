using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// When fewer points do. The trapezoid rule's error falls as exp(-2 pi zeta / step), zeta the damping of a resonance, so both modes must
/// be damped (too much damping locks the two masses into one mode without any), must lie away from the grid's ends, and the enveloping must
/// not turn faster than the ends' weights follow.
/// </summary>
/// <param name="LeastDamping">The least damping ratio of either mode.</param>
/// <param name="LowestBounceHz">The least natural frequency of the lower mode, Hz.</param>
/// <param name="HighestHopHz">The greatest natural frequency of the upper mode, Hz.</param>
/// <param name="GreatestShiftSeconds">The greatest contact length over speed, s.</param>
internal sealed record GridRule(double LeastDamping, double LowestBounceHz, double HighestHopHz, double GreatestShiftSeconds)
{
    private const double GreatestDamping = 1;

    private readonly float leastDamping = FourTimesSquared(LeastDamping);
    private readonly float greatestDamping = FourTimesSquared(GreatestDamping);
    private readonly float lowest = Squared(LowestBounceHz);
    private readonly float highest = Squared(HighestHopHz);
    private readonly float greatestShift = (float)(GreatestShiftSeconds * MomentGrid.CentreHz);

    /// <summary>1 for the rows whose ride and legs all keep the rule, 0 for others, anything NaN among them.</summary>
    public T Admits<T>(MomentInputs inputs, int row, int legs)
        where T : struct, IFloatLanes<T>
    {
        T admits = T.Create(1);
        admits = IfAbove(inputs.Column<T>(row, RideCoefficients.LowerSquared), T.Create(lowest), admits);
        admits = IfAbove(T.Create(highest), inputs.Column<T>(row, RideCoefficients.UpperSquared), admits);
        admits = IfDamped(inputs.Column<T>(row, RideCoefficients.LowerDamping), admits);
        admits = IfDamped(inputs.Column<T>(row, RideCoefficients.UpperDamping), admits);
        for (int leg = 0; leg < legs; leg++)
        {
            admits = IfAbove(T.Create(greatestShift), T.Load(in inputs.Shift(leg, row)), admits);
        }

        return admits;
    }

    private T IfDamped<T>(T damping, T admits)
        where T : struct, IFloatLanes<T> =>
        IfAbove(damping, T.Create(leastDamping), IfAbove(T.Create(greatestDamping), damping, admits));

    private static T IfAbove<T>(T value, T limit, T admits)
        where T : struct, IFloatLanes<T> => T.IfLess(limit, value, admits, T.Create(0));

    private static float Squared(double hz) => (float)Math.Pow(hz / MomentGrid.CentreHz, 2);

    // RideCoefficients has (2 zeta)^2.
    private static float FourTimesSquared(double damping) => (float)(4 * damping * damping);
}
