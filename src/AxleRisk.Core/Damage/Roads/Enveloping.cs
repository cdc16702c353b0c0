namespace AxleRisk.Core.Damage.Roads;

/// <summary>The tyre's averaging of the road over the length of its contact.</summary>
internal static class Enveloping
{
    /// <summary>Gain on the road's spectral density: <c>sinc^2(n Lc)</c>, sinc(x) = sin(pi x)/(pi x).</summary>
    /// <param name="n">Wavenumber, cycles/m.</param>
    /// <param name="contactLengthM">Contact length Lc, m; 0 for contact in a point.</param>
    public static double Gain(double n, double contactLengthM)
    {
        double x = Math.PI * n * contactLengthM;
        if (x == 0)
        {
            return 1;
        }

        double sinc = Math.Sin(x) / x;
        return sinc * sinc;
    }
}
