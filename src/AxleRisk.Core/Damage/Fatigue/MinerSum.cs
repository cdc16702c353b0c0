namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>Miner's sum of counted cycles on an S-N curve (Palmgren 1924, Miner 1945).</summary>
/// <param name="stressScale">MPa per unit of the counted signal.</param>
/// <param name="curve">The curve.</param>
internal struct MinerSum(double stressScale, SnConstants curve) : ICycleSink
{
    private readonly double stressScale = stressScale;
    private readonly SnConstants curve = curve;

    /// <summary>The sum.</summary>
    public double Damage { readonly get; set; }

    /// <inheritdoc/>
    public void Add(double range, double mean, double count) => Damage += count * OfRange(stressScale * range, curve);

    /// <summary>Damage of a cycle of a stress range.</summary>
    /// <param name="range">The range, MPa.</param>
    /// <param name="curve">The curve.</param>
    public static double OfRange(double range, SnConstants curve)
    {
        foreach (SnPiece piece in curve.Pieces)
        {
            if (range >= piece.FromMPa)
            {
                return piece.Damage * Power(range, piece.Slope);
            }
        }

        return 0;
    }

    private static double Power(double x, double slope)
    {
        double square = x * x;
        return slope switch
        {
            3 => square * x,
            4 => square * square,
            5 => square * square * x,
            _ => Math.Pow(x, slope),
        };
    }
}
