using System.Runtime.CompilerServices;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Bearings;

/// <summary>The wheel bearing: its input and its rate, one over its rating life.</summary>
/// <param name="capacity">The number of rows.</param>
/// <param name="exponent">The life exponent, <see cref="BearingLife.BallExponent"/> or <see cref="BearingLife.RollerExponent"/>.</param>
internal sealed class BearingColumns(int capacity, double exponent) : ModeColumns(capacity, 3)
{
    private const double Million = 1e6;

    // E|X|^p over (mean^2 + sd^2)^(p/2) of a normal X as a polynomial in 2 sd^2/(mean^2 + sd^2) - 1, which ends at no spread and
    // at no mean:
    // Chebyshev sums of degree 8 of the exact integral, within 7.3e-6 (p = 3) and 4.9e-6 (p = 10/3) of it everywhere.
    private static readonly float[] Ball =
        [1.47876477f, 0.256702989f, -0.169524029f, 0.0389057249f, -0.0131070493f, 0.00729823625f, -0.00151607406f, -0.00502335047f,
            0.0032722617f];

    private static readonly float[] Roller =
        [1.73906803f, 0.424864858f, -0.258121759f, 0.0419062413f, -0.0126084825f, 0.00652234349f, -0.00173504627f, -0.00395470811f,
            0.00273808464f];

    private readonly float[] shape = exponent == BearingLife.BallExponent ? Ball
        : exponent == BearingLife.RollerExponent ? Roller
        : throw new ArgumentOutOfRangeException(nameof(exponent), exponent, "Neither that of a ball nor that of a roller bearing");

    /// <summary>Load of the more loaded bearing over the wheel's force.</summary>
    public double[] LoadFactor => All[0];

    /// <summary>Basic dynamic load rating of the bearing, N.</summary>
    public double[] RatingN => All[1];

    /// <summary>Revolutions of the wheel per km.</summary>
    public double[] RevolutionsPerKm => All[2];

    /// <inheritdoc/>
    public override double PerKm(in LegLoad load, int row)
    {
        double overRating = LoadFactor[row] / RatingN[row];
        return BearingLife.MeanPower(overRating * load.StaticForceN, overRating * Math.Sqrt(load.Moments.Force0), exponent)
            * RevolutionsPerKm[row] / Million;
    }

    /// <summary>A turn of the wheel under the greatest load; what a moment in the section does to the bearing is not known.</summary>
    /// <inheritdoc/>
    public override double OfEvent(double peakN, bool isMoment, int row) =>
        isMoment ? 0 : Math.Pow(LoadFactor[row] * peakN / RatingN[row], exponent) / Million;

    /// <inheritdoc/>
    public override void FillPerKm<T>(LegForces loads, int first, int rows, AlignedBuffer<float> perKm)
    {
        for (int row = 0; row < rows; row += T.Count)
        {
            T overRating = ColumnLanes.Load<T>(LoadFactor, first + row) / ColumnLanes.Load<T>(RatingN, first + row);
            T power = MeanPower(overRating * loads.Of<T>(LegForces.Static, row), overRating * loads.Of<T>(LegForces.Force, row));
            T.Store(power * ColumnLanes.Load<T>(RevolutionsPerKm, first + row) * T.Create((float)(1 / Million)), ref perKm.At(row));
        }
    }

    /// <summary><see cref="BearingLife.MeanPower"/> of several rows, but exact for loads that change their sign.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal T MeanPower<T>(T mean, T sd)
        where T : struct, IFloatLanes<T>
    {
        T variance = sd * sd;
        T square = T.MultiplyAdd(mean, mean, variance);
        T place = variance / square * T.Create(2) - T.Create(1);
        T sum = T.Create(shape[^1]);
        for (int i = shape.Length - 2; i >= 0; i--)
        {
            sum = T.MultiplyAdd(sum, place, T.Create(shape[i]));
        }

        T power = exponent == BearingLife.BallExponent
            ? square * T.Sqrt(square) : VectorMath.Exp(T.Create((float)(exponent / 2)) * T.Log(square));
        return power * sum;
    }
}
