using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage.Bearings;

/// <summary>Rating life of a rolling bearing, ISO 281:2007.</summary>
internal static class BearingLife
{
    /// <summary>Life exponent of a ball bearing.</summary>
    public const double BallExponent = 3;

    /// <summary>Life exponent of a roller bearing.</summary>
    public const double RollerExponent = 10.0 / 3;

    /// <summary>Slope of the Weibull distribution behind the reliability factor.</summary>
    public const double WeibullSlope = 1.5;

    /// <summary>The part of the rating life that every bearing reaches, behind the reliability factor of the 2007 edition.</summary>
    public const double LeastLife = 0.05;

    /// <summary>Basic rating life, million revolutions: <c>(C/P)^p</c>; 90 % reach it.</summary>
    /// <param name="rating">Basic dynamic load rating C.</param>
    /// <param name="load">Equivalent load P, in the same unit.</param>
    /// <param name="exponent">Life exponent p.</param>
    public static double RatingMillionRevolutions(double rating, double load, double exponent) => Math.Pow(rating / load, exponent);

    /// <summary>
    /// Reliability factor a1, life that a share of bearings reaches over rating life: <c>0.05 + 0.95 (ln(1/R)/ln(1/0.9))^(2/3)</c>, which
    /// gives every digit of the table in ISO 281:2007.
    /// </summary>
    /// <param name="reliability">The share R, above 0 and below 1.</param>
    public static double ReliabilityFactor(double reliability) =>
        LeastLife + (1 - LeastLife) * Math.Pow(Math.Log(reliability) / Math.Log(0.9), 1 / WeibullSlope);

    /// <summary>
    /// Weibull scale of life over rating life above <see cref="LeastLife"/>: the distribution of <see cref="ReliabilityFactor"/>.
    /// </summary>
    public static double WeibullScale { get; } = (1 - LeastLife) / Math.Pow(-Math.Log(0.9), 1 / WeibullSlope);

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
