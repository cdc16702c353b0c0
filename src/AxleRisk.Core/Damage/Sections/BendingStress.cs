namespace AxleRisk.Core.Damage.Sections;

/// <summary>Stress in the checked section from the force at the wheel.</summary>
internal static class BendingStress
{
    /// <summary>
    /// Stress per unit of force, MPa/N: <c>factor * |arm| / Z</c>. Infinite where no section is left, whatever the arm.
    /// </summary>
    /// <param name="factor">Stress factor times stress concentration.</param>
    /// <param name="armMm">Lateral distance from the contact's centre to the section, mm; on either side.</param>
    /// <param name="sectionModulusMm3">Section modulus Z, mm^3.</param>
    public static double PerForce(double factor, double armMm, double sectionModulusMm3) =>
        sectionModulusMm3 == 0 ? double.PositiveInfinity : factor * Math.Abs(armMm) / sectionModulusMm3;
}
