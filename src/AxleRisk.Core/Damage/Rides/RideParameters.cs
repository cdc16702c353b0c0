namespace AxleRisk.Core.Damage.Rides;

/// <summary>One wheel's two-mass ride model, SI.</summary>
/// <param name="SprungKg">Sprung mass ms, kg, above 0.</param>
/// <param name="UnsprungKg">Unsprung mass mu, kg, above 0.</param>
/// <param name="SpringNPerM">Suspension rate ks, N/m.</param>
/// <param name="DamperNsPerM">Damper rate cs, N s/m.</param>
/// <param name="TyreNPerM">Tyre rate kt, N/m.</param>
/// <param name="TyreDampingNsPerM">Tyre damping ct, N s/m.</param>
/// <param name="OutboardShare">Share phi of the unsprung mass outboard of the checked section, 0 to 1.</param>
internal readonly record struct RideParameters(
    double SprungKg, double UnsprungKg, double SpringNPerM, double DamperNsPerM, double TyreNPerM, double TyreDampingNsPerM,
    double OutboardShare);
