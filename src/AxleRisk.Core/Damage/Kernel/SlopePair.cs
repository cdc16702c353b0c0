using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// The whole slopes of an S-N curve on either side of its one knee.
/// </summary>
/// <param name="Above">Slope above the knee.</param>
/// <param name="Below">Slope below the knee, not smaller.</param>
internal readonly record struct SlopePair(int Above, int Below) : IRangeDamage
{
    private const int Steepest = 20;

    /// <summary>The slopes of a curve that <see cref="Serves"/>.</summary>
    public SlopePair(SnCurve curve)
        : this((int)curve.Lines[0].Slope, (int)curve.Lines[1].Slope)
    {
    }

    /// <summary>Whether the closed forms serve a curve: two different whole slopes, the steeper one below the knee.</summary>
    public static bool Serves(SnCurve curve) => curve.Lines is [var above, var below]
        && IsWhole(above.Slope) && IsWhole(below.Slope) && below.Slope > above.Slope
        && curve.KneesMPa is [> 0 and < double.PositiveInfinity];

    /// <inheritdoc/>
    public T OfRange<T>(T range, T cutOff)
        where T : struct, IFloatLanes<T>
    {
        T above = Power(range, Above);
        T damage = T.IfLess(range, T.Create(1), above * Power(range, Below - Above), above);
        return T.IfLess(range, cutOff, T.Create(0), damage);
    }

    private static T Power<T>(T x, int n)
        where T : struct, IFloatLanes<T>
    {
        T power = x;
        for (int i = 1; i < n; i++)
        {
            power *= x;
        }

        return power;
    }

    private static bool IsWhole(double slope) => slope >= 1 && slope <= Steepest && slope == Math.Floor(slope);
}
