using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.TimeDomain;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>The ride in time in plain code, one record: what the faster one is tested against.</summary>
internal static class RideSimulation
{
    /// <summary>Runs through one period of an input.</summary>
    /// <param name="ride">The ride.</param>
    /// <param name="limits">Where it stops being linear.</param>
    /// <param name="input">The road's part of the tyre force, <c>kt z + ct z'</c>, N: one period, evenly spaced.</param>
    /// <param name="seconds">The time between two samples, s.</param>
    /// <param name="state">The state (zs, zs', zu, zu') at the first sample, m and m/s; left at that one period later.</param>
    /// <param name="sectionForce">Takes the force through the section about its static value, N, at every sample; may be empty.</param>
    /// <param name="travel">Takes the suspension's compression from its static position, m; may be empty.</param>
    /// <param name="tyreForce">Takes the tyre force about its static value, N; may be empty.</param>
    /// <returns>What happened on the way.</returns>
    public static RideCounts Run(
        in RideParameters ride, RideLimits limits, ReadOnlySpan<double> input, double seconds, Span<double> state,
        Span<double> sectionForce, Span<double> travel, Span<double> tyreForce)
    {
        var step = new RideStep(ride, seconds);
        int samples = input.Length;
        Span<double> next = stackalloc double[RideMatrix.States];
        var counts = new RideCounts();
        double before = state[2] - state[0];
        for (int i = 0; i < samples; i++)
        {
            RideForces forces = RideForces.In(ride, limits, state, input[i]);
            double compression = state[2] - state[0];
            if (compression > limits.BumpClearanceM && before <= limits.BumpClearanceM)
            {
                counts.BumpStrikes++;
            }

            if (-compression > limits.ReboundClearanceM && -before <= limits.ReboundClearanceM)
            {
                counts.ReboundStrikes++;
            }

            if (forces.Tyre <= -limits.StaticTyreForceN)
            {
                counts.SamplesOffGround++;
            }

            before = compression;
            if (!sectionForce.IsEmpty)
            {
                sectionForce[i] = forces.Section(ride.OutboardShare);
            }

            if (!travel.IsEmpty)
            {
                travel[i] = compression;
            }

            if (!tyreForce.IsEmpty)
            {
                tyreForce[i] = forces.Tyre;
            }

            double atEnd = input[(i + 1) % samples];
            Predict(step, state, input[(i + samples - 1) % samples], input[i], atEnd, input[(i + 2) % samples], forces, next);
            if (!limits.IsLinear)
            {
                RideForces predicted = RideForces.In(ride, limits, next, atEnd);
                double tyreRise = predicted.TyreBeyond - forces.TyreBeyond;
                double suspensionRise = predicted.SuspensionBeyond - forces.SuspensionBeyond;
                for (int k = 0; k < RideMatrix.States; k++)
                {
                    next[k] += step.TyreRising[k] * tyreRise + step.SuspensionRising[k] * suspensionRise;
                }
            }
            next.CopyTo(state);
        }
        return counts;
    }

    private static void Predict(
        RideStep step, ReadOnlySpan<double> x, double before, double atStart, double atEnd, double after, in RideForces forces,
        Span<double> next)
    {
        for (int k = 0; k < RideMatrix.States; k++)
        {
            double sum = step.Input[0, k] * before + step.Input[1, k] * atStart + step.Input[2, k] * atEnd + step.Input[3, k] * after;
            sum += step.TyreHeld[k] * forces.TyreBeyond + step.SuspensionHeld[k] * forces.SuspensionBeyond;
            for (int j = 0; j < RideMatrix.States; j++)
            {
                sum += step.Transition[k, j] * x[j];
            }

            next[k] = sum;
        }
    }
}

/// <summary>What happened in a simulated ride.</summary>
internal record struct RideCounts
{
    /// <summary>How often the bump stop was met: crossings of the clearance.</summary>
    public long BumpStrikes { get; set; }

    /// <summary>How often the rebound stop was met.</summary>
    public long ReboundStrikes { get; set; }

    /// <summary>Samples at which the wheel was off the ground.</summary>
    public long SamplesOffGround { get; set; }
}
