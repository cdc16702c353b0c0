namespace AxleRisk.Core.Numerics.Vectors;

/// <summary>
/// A vector register of single-precision numbers. Code written once against this runs at every width: the compiler
/// makes a version for each structure that stands for <typeparamref name="T"/>.
/// </summary>
internal interface IFloatLanes<T>
    where T : struct, IFloatLanes<T>
{
    /// <summary>The number of lanes.</summary>
    static abstract int Count { get; }

    static abstract T operator +(T a, T b);

    static abstract T operator -(T a, T b);

    static abstract T operator *(T a, T b);

    static abstract T operator /(T a, T b);

    /// <summary>The same value in all lanes.</summary>
    static abstract T Create(float value);

    /// <summary>The lanes at an address.</summary>
    static abstract T Load(ref readonly float from);

    /// <summary>The lanes at an address of doubles, rounded.</summary>
    static abstract T Load(ref readonly double from);

    /// <summary>Writes the lanes to an address.</summary>
    static abstract void Store(T value, ref float to);

    /// <summary>Writes the lanes to an address of doubles.</summary>
    static abstract void Store(T value, ref double to);

    /// <summary><c>a b + c</c>, in one rounding where the machine can.</summary>
    static abstract T MultiplyAdd(T a, T b, T c);

    /// <summary>The square root.</summary>
    static abstract T Sqrt(T value);

    /// <summary>The absolute value.</summary>
    static abstract T Abs(T value);

    /// <summary>The natural logarithm.</summary>
    static abstract T Log(T value);

    /// <summary>In each lane <paramref name="then"/> where a is below b, otherwise (NaN among it) <paramref name="otherwise"/>.</summary>
    static abstract T IfLess(T a, T b, T then, T otherwise);

    /// <summary>
    /// <paramref name="value"/> times 2^n, n in the low bits of <paramref name="shifted"/> = n + 1.5 x 2^23. Within the normal range only.
    /// </summary>
    static abstract T TimesPowerOfTwo(T value, T shifted);

    /// <summary>Whether any lane is not zero.</summary>
    static abstract bool AnyNonzero(T value);
}
