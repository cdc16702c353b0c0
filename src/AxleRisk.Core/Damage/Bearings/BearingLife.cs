using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage.Bearings;

/// <summary>Rating life of a rolling bearing, ISO 281:2007.</summary>
internal static class BearingLife
{
    /// <summary>Life exponent of a ball bearing.</summary>
    public const double BallExponent = 3;

    /// <summary>Life exponent of a roller bearing.</summary>
    public const double RollerExponent = 10.0 / 3;

    /// <summary>
    /// The greater load of two bearings over the wheel's force, by levers: the outer carries <c>1 + e/s</c>, the inner <c>-e/s</c>.
    /// </summary>
    /// <param name="overhangM">How far the contact centre lies outboard of the outer bearing, e; negative where it lies between
    /// the two.</param>
    /// <param name="spreadM">Distance of the two bearings, s, above 0.</param>
    public static double LoadFactor(double overhangM, double spreadM) =>
        Math.Max(Math.Abs(1 + overhangM / spreadM), Math.Abs(overhangM / spreadM));

    /// <summary>The mean of |X|^p of a normal X: what a load about its static value weighs in the equivalent load.</summary>
    /// <param name="mean">The mean, N.</param>
    /// <param name="sd">The standard deviation, N.</param>
    /// <param name="exponent">The exponent p, above 0.</param>
    public static double MeanPower(double mean, double sd, double exponent)
    {
        double sum = 0;
        for (int i = 0; i < NormalNodes.Count; i++)
        {
            sum += NormalNodes.Weights[i] * Math.Pow(Math.Abs(mean + sd * NormalNodes.Points[i]), exponent);
        }

        return sum;
    }
}
