using System.Runtime.CompilerServices;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary><see cref="PartialGamma"/> several rows at a time: Gamma(a, y) on its way up from a = 1 or 1/2, with y^a e^-y.</summary>
/// <typeparam name="T">The lanes.</typeparam>
internal struct PartialGammas<T>
    where T : struct, IDoubleLanes<T>
{
    private double a;
    private T upper;
    private T power;

    /// <summary>Starts anywhere.</summary>
    /// <param name="a">The first argument.</param>
    /// <param name="upper">Gamma(a, y).</param>
    /// <param name="power">y^a e^-y.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public PartialGammas(double a, T upper, T power)
    {
        this.a = a;
        this.upper = upper;
        this.power = power;
    }

    /// <summary>Gamma(a, y).</summary>
    public readonly T Upper => upper;

    /// <summary>Raises a by a whole number: Gamma(a + 1, y) = a Gamma(a, y) + y^a e^-y (DLMF 8.8.2).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void RaiseBy(int steps, T y)
    {
        for (int i = 0; i < steps; i++)
        {
            upper = T.MultiplyAdd(T.Create(a), upper, power);
            power *= y;
            a++;
        }
    }

    /// <summary>The lower function gamma(a, y) of a small y: four terms of its series (DLMF 8.7.1).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly T LowerOfSmall(T y)
    {
        T one = T.Create(1);
        T series = T.MultiplyAdd(y, T.Create(1 / (a + 3)), one);
        series = T.MultiplyAdd(y * series, T.Create(1 / (a + 2)), one);
        series = T.MultiplyAdd(y * series, T.Create(1 / (a + 1)), one);
        return power * series * T.Create(1 / a);
    }
}
