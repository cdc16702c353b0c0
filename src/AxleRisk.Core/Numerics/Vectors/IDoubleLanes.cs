namespace AxleRisk.Core.Numerics;

/// <summary>A vector register of double-precision numbers, as <see cref="IFloatLanes{T}"/> for single precision.</summary>
internal interface IDoubleLanes<T>
    where T : struct, IDoubleLanes<T>
{
    /// <summary>The number of lanes.</summary>
    static abstract int Count { get; }

    static abstract T operator +(T a, T b);

    static abstract T operator -(T a, T b);

    static abstract T operator *(T a, T b);

    static abstract T operator /(T a, T b);

    /// <summary>The same value in all lanes.</summary>
    static abstract T Create(double value);

    /// <summary>The lanes at an address.</summary>
    static abstract T Load(ref readonly double from);

    /// <summary>The lanes at an address of floats.</summary>
    static abstract T Load(ref readonly float from);

    /// <summary>Writes the lanes to an address.</summary>
    static abstract void Store(T value, ref double to);

    /// <summary><c>a b + c</c>, in one rounding where the machine can.</summary>
    static abstract T MultiplyAdd(T a, T b, T c);

    /// <summary>The square root.</summary>
    static abstract T Sqrt(T value);

    /// <summary>The absolute value.</summary>
    static abstract T Abs(T value);

    /// <summary>The exponential.</summary>
    static abstract T Exp(T value);

    /// <summary>The natural logarithm.</summary>
    static abstract T Log(T value);

    /// <summary>In each lane <paramref name="then"/> where a is below b, otherwise (NaN among it) <paramref name="otherwise"/>.</summary>
    static abstract T IfLess(T a, T b, T then, T otherwise);

    /// <summary>
    /// <paramref name="value"/> times 2^n, n in the low bits of <paramref name="shifted"/> = n + 1.5 x 2^52. Within the normal range only.
    /// </summary>
    static abstract T TimesPowerOfTwo(T value, T shifted);
}
