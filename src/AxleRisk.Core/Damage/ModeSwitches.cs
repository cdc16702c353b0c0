namespace AxleRisk.Core.Damage;

/// <summary>Which of the modes beside plain fatigue are on.</summary>
/// <param name="BumpStop">Whether strikes on the bump stop add fatigue damage.</param>
/// <param name="Yield">Whether first yield is a mode of failure.</param>
/// <param name="BearingExponent">The life exponent of the wheel bearing; 0 where its life is no mode of failure.</param>
public readonly record struct ModeSwitches(bool BumpStop, bool Yield, double BearingExponent)
{
    /// <summary>Whether the bearing's life is a mode.</summary>
    public bool Bearing => BearingExponent > 0;

    /// <summary>Whether any is on.</summary>
    public bool Any => BumpStop || Yield || Bearing;
}
