namespace AxleRisk.Core.Damage;

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
    double OutboardShare)
{
    /// <summary>The ride of the first row.</summary>
    public static RideParameters OfFirstRow(DamageColumns columns) => new(
        columns.SprungMassKg[0], columns.UnsprungMassKg[0], columns.SpringNPerM[0], columns.DamperNsPerM[0],
        columns.TyreNPerM[0], columns.TyreDampingNsPerM[0], columns.OutboardShare[0]);
}
