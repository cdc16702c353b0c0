namespace AxleRisk.Core.Damage.TimeDomain;

/// <summary>What sixteen independent simulated records of one surface came to.</summary>
/// <param name="Seconds">Length of each record, s.</param>
/// <param name="DamagePerSecond">Miner damage a second of each record.</param>
/// <param name="ForceRmsN">RMS of the force through the section about its static value, over all records.</param>
/// <param name="TyreForceRmsN">RMS of the tyre force about its static value.</param>
/// <param name="BumpStrikesPerSecond">How often the bump stop was met.</param>
/// <param name="ReboundStrikesPerSecond">How often the rebound stop was met.</param>
/// <param name="OffGroundShare">Share of the time in which the tyre force was nothing, or less in a ride that does not lift off.</param>
internal sealed record SurfaceResult(
    double Seconds, double[] DamagePerSecond, double ForceRmsN, double TyreForceRmsN, double BumpStrikesPerSecond,
    double ReboundStrikesPerSecond, double OffGroundShare);
