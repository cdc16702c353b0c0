namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>An S-N curve as the damage integrals want it: damage per cycle of range S is <c>C S^m</c>.</summary>
/// <param name="SlopeAbove">Slope above the knee.</param>
/// <param name="DamageAbove">C above the knee: 10^-log10 a.</param>
/// <param name="SlopeBelow">Slope below the knee.</param>
/// <param name="DamageBelow">C below the knee.</param>
/// <param name="KneeMPa">Stress range at the knee; 0 for one slope throughout.</param>
/// <param name="CutOffMPa">Stress range below which there is no damage; 0 for none.</param>
internal readonly record struct SnConstants(
    double SlopeAbove, double DamageAbove, double SlopeBelow, double DamageBelow, double KneeMPa, double CutOffMPa)
{
    public static SnConstants From(SnCurve curve) => new(
        curve.SlopeAboveKnee, Math.Pow(10, -curve.Log10AAboveKnee),
        curve.SlopeBelowKnee, Math.Pow(10, -curve.Log10ABelowKnee),
        curve.KneeMPa, curve.CutOffMPa);
}
