namespace AxleRisk.Core.Damage;

/// <summary>What of the modes' input is the same on every leg of a row.</summary>
internal readonly struct RowLoads
{
    private readonly RideParameters ride;
    private readonly ModeSwitches modes;
    private readonly double staticForceN;
    private readonly BumpStop stop;
    private readonly double stressPerForce;
    private readonly SnConstants curve;
    private readonly double nominalStressPerForce;
    private readonly double yieldMPa;
    private readonly double bearingLoadOverRating;
    private readonly double revolutionsPerKm;

    /// <summary>Takes the input of a row.</summary>
    public RowLoads(in RideParameters ride, DamageColumns columns, int row, ModeSwitches modes, SnCurve curve)
    {
        this.ride = ride;
        this.modes = modes;
        staticForceN = StaticForceN(ride);
        ModeColumns m = columns.Modes;
        stop = new BumpStop(m.BumpClearanceM[row], m.BumpStopNPerM[row]);
        stressPerForce = Math.Abs(columns.StressPerForceMPaPerN[row]) * curve.ThicknessFactor(columns.ThicknessMm[row]);
        this.curve = SnConstants.From(curve);
        nominalStressPerForce = Math.Abs(m.NominalStressMPaPerN[row]);
        yieldMPa = m.YieldMPa[row];
        bearingLoadOverRating = m.BearingLoadFactor[row] / m.BearingRatingN[row];
        revolutionsPerKm = m.RevolutionsPerKm[row];
    }

    /// <summary>The static force through the section, N: the wheel load less the weight that lies outboard.</summary>
    public static double StaticForceN(in RideParameters ride) =>
        (ride.SprungKg + (1 - ride.OutboardShare) * ride.UnsprungKg) * RideLimits.Gravity;

    /// <summary>The rates per km on a road of these moments.</summary>
    /// <param name="moments">The moments.</param>
    /// <param name="speed">Speed, m/s.</param>
    public LegRates On(in ModeMoments moments, double speed)
    {
        double perKm = 1000 / speed;
        double strikes = modes.BumpStop ? StrikeDamage.PerSecond(ride, moments, stop, stressPerForce, curve) * perKm : 0;
        double bearing = modes.Bearing
            ? BearingLife.MeanPower(bearingLoadOverRating * staticForceN, bearingLoadOverRating * Math.Sqrt(moments.Force0), modes.BearingExponent)
            : 0;
        return new(strikes, modes.Yield ? YieldPerSecond(moments) * perKm : 0, bearing);
    }

    /// <summary>One over the bearing's rating life, 1/km.</summary>
    /// <param name="power">The mean of its load over its rating, to the power of the life exponent.</param>
    public double BearingPerKm(double power) => modes.Bearing ? power * revolutionsPerKm * 1e-6 : 0;

    private double YieldPerSecond(in ModeMoments moments)
    {
        double k = nominalStressPerForce;
        double plain = YieldRate.PerSecond(k * staticForceN, k * k * moments.Force0, k * k * moments.Force2, yieldMPa);
        return modes.BumpStop && double.IsFinite(plain)
            ? plain + StrikeDamage.ExceedancesPerSecond(ride, moments, stop, yieldMPa / k - staticForceN)
            : plain;
    }
}
