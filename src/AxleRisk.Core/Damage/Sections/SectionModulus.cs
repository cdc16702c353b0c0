namespace AxleRisk.Core.Damage.Sections;

/// <summary>Elastic section moduli in vertical bending, mm^3. No wall left gives 0, a wall beyond the middle the solid section.</summary>
internal static class SectionModulus
{
    /// <summary>A round tube: <c>pi (D^4 - d^4) / (32 D)</c>, d = D - 2 t.</summary>
    /// <param name="diameterMm">Outside diameter D, mm.</param>
    /// <param name="wallMm">Wall t, mm.</param>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not above 0, or the wall is not a number.</exception>
    public static double Tube(double diameterMm, double wallMm)
    {
        Require(diameterMm > 0, nameof(diameterMm));
        Require(!double.IsNaN(wallMm), nameof(wallMm));
        if (wallMm <= 0)
        {
            return 0;
        }

        double bore = Math.Max(diameterMm - 2 * wallMm, 0);
        return Math.PI / (32 * diameterMm) * (Fourth(diameterMm) - Fourth(bore));
    }

    /// <summary>A rectangular box with sharp corners: <c>(B H^3 - b h^3) / (6 H)</c>, b = B - 2 t, h = H - 2 t.</summary>
    /// <param name="widthMm">Outside width B, horizontal, mm.</param>
    /// <param name="heightMm">Outside height H, along the bending direction, mm.</param>
    /// <param name="wallMm">Wall t, mm.</param>
    /// <exception cref="ArgumentOutOfRangeException">Width or height is not above 0, or the wall is not a number.</exception>
    public static double Box(double widthMm, double heightMm, double wallMm)
    {
        Require(widthMm > 0, nameof(widthMm));
        Require(heightMm > 0, nameof(heightMm));
        Require(!double.IsNaN(wallMm), nameof(wallMm));
        if (wallMm <= 0)
        {
            return 0;
        }

        double innerWidth = Math.Max(widthMm - 2 * wallMm, 0);
        double innerHeight = Math.Max(heightMm - 2 * wallMm, 0);
        return (widthMm * Cube(heightMm) - innerWidth * Cube(innerHeight)) / (6 * heightMm);
    }

    private static double Cube(double x) => x * x * x;

    private static double Fourth(double x) => x * x * (x * x);

    private static void Require(bool holds, string name)
    {
        if (!holds)
        {
            throw new ArgumentOutOfRangeException(name);
        }
    }
}
