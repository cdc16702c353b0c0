namespace AxleRisk.Core.Damage.Rides;

/// <summary>
/// Where the ride stops being linear. All of it is off unless said: <see cref="None"/> is the ride of the spectral model. Each part is
/// linear by pieces.
/// </summary>
internal sealed record RideLimits
{
    /// <summary>The linear ride.</summary>
    public static RideLimits None { get; } = new();

    /// <summary>Compression of the suspension from its static position at which the bump stop is met, m; infinite for none.</summary>
    public double BumpClearanceM { get; init; } = double.PositiveInfinity;

    /// <summary>Rate of the bump stop, beside the spring's, N/m; 0 counts strikes without a force.</summary>
    public double BumpStopNPerM { get; init; }

    /// <summary>Extension from the static position at which the rebound stop is met, m; infinite for none.</summary>
    public double ReboundClearanceM { get; init; } = double.PositiveInfinity;

    /// <summary>Rate of the rebound stop, N/m.</summary>
    public double ReboundStopNPerM { get; init; }

    /// <summary>The static tyre force, N: where the tyre force about it falls to minus this, the wheel leaves the ground.</summary>
    public double StaticTyreForceN { get; init; } = double.PositiveInfinity;

    /// <summary>
    /// Whether it does: a tyre does not pull. Otherwise the tyre holds on to the ground, as in the linear model, and the time is
    /// counted.
    /// </summary>
    public bool LiftsOff { get; init; }

    /// <summary>The damper's rate in compression over that of the linear model.</summary>
    public double BumpDamping { get; init; } = 1;

    /// <summary>The damper's rate in extension over that of the linear model.</summary>
    public double ReboundDamping { get; init; } = 1;

    /// <summary>Whether any part acts.</summary>
    public bool IsLinear =>
        (double.IsPositiveInfinity(BumpClearanceM) || BumpStopNPerM == 0)
            && (double.IsPositiveInfinity(ReboundClearanceM) || ReboundStopNPerM == 0)
        && !LiftsOff && BumpDamping == 1 && ReboundDamping == 1;

    /// <summary>Standard acceleration of gravity, m/s^2 (CGPM 1901).</summary>
    public const double Gravity = 9.80665;

    /// <summary>The static tyre force of a ride, N.</summary>
    public static double StaticTyreForce(in RideParameters ride) => (ride.SprungKg + ride.UnsprungKg) * Gravity;
}
