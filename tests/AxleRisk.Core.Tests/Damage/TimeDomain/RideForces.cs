using AxleRisk.Core.Damage.Rides;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>The forces on the axle in one state of the ride, about their static values, upward, N.</summary>
/// <param name="Tyre">The tyre's force on the axle.</param>
/// <param name="TyreBeyond">What of it is beyond the linear law.</param>
/// <param name="Suspension">The suspension's force on the axle.</param>
/// <param name="SuspensionBeyond">What of it is beyond the linear law.</param>
internal readonly record struct RideForces(double Tyre, double TyreBeyond, double Suspension, double SuspensionBeyond)
{
    /// <summary>The forces in a state.</summary>
    /// <param name="p">The ride.</param>
    /// <param name="limits">Where it stops being linear.</param>
    /// <param name="x">The state (zs, zs', zu, zu').</param>
    /// <param name="u">The road's part of the tyre force, <c>kt z + ct z'</c>.</param>
    public static RideForces In(in RideParameters p, RideLimits limits, ReadOnlySpan<double> x, double u)
    {
        double tyre = u - p.TyreNPerM * x[2] - p.TyreDampingNsPerM * x[3];
        double tyreBeyond = limits.LiftsOff ? Math.Max(0, -limits.StaticTyreForceN - tyre) : 0;
        double compression = x[2] - x[0];
        double rate = x[3] - x[1];
        double beyond = -p.DamperNsPerM
            * ((limits.BumpDamping - 1) * Math.Max(0, rate) + (limits.ReboundDamping - 1) * Math.Min(0, rate));
        if (limits.BumpStopNPerM > 0)
        {
            beyond -= limits.BumpStopNPerM * Math.Max(0, compression - limits.BumpClearanceM);
        }

        if (limits.ReboundStopNPerM > 0)
        {
            beyond += limits.ReboundStopNPerM * Math.Max(0, -compression - limits.ReboundClearanceM);
        }

        double suspension = -p.SpringNPerM * compression - p.DamperNsPerM * rate + beyond;
        return new(tyre + tyreBeyond, tyreBeyond, suspension, beyond);
    }

    /// <summary>
    /// The force through the checked section about its static value: the tyre's less the inertia of what lies outboard,
    /// <c>F = Ft - phi mu zu''</c>.
    /// </summary>
    public double Section(double outboardShare) => Tyre - outboardShare * (Tyre + Suspension);
}
