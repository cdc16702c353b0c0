using System.Runtime.Intrinsics;

namespace AxleRisk.Core.Numerics.Vectors;

/// <summary>
/// Functions of whole columns, eight rows at a time. The last rows run through the same arithmetic, so a value does not
/// depend on its place. Source and target may be the same memory.
/// </summary>
internal static class VectorColumns
{
    private const int Width = 8;

    /// <summary><c>scale * exp(slope * x)</c> of every element.</summary>
    public static void ScaledExp(ReadOnlySpan<double> x, double slope, double scale, Span<double> y) =>
        Apply(new ScaledExpOf(slope, scale), x, y);

    /// <summary><c>offset + slope * x</c> of every element.</summary>
    public static void Line(ReadOnlySpan<double> x, double slope, double offset, Span<double> y) => Apply(new LineOf(slope, offset), x, y);

    /// <summary>
    /// <c>low + (high - low) / (1 + exp(-x))</c> of every element, from the nearer end, so that the distance to it keeps its
    /// digits.
    /// </summary>
    public static void Logistic(ReadOnlySpan<double> x, double low, double high, Span<double> y) => Apply(new LogisticOf(low, high), x, y);

    /// <summary><c>scale * x</c> of every element.</summary>
    public static void Scale(ReadOnlySpan<double> x, double scale, Span<double> y) => Apply(new MultipleOf(scale), x, y);

    /// <summary>Brings every element into a range, in place.</summary>
    public static void Clamp(Span<double> x, double least, double most) => Apply(new WithinOf(least, most), x, x);

    /// <summary><c>scale * x[i] * y[i]</c>.</summary>
    public static void ScaledProduct(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double scale, Span<double> to) =>
        Apply(new ProductOf(scale), x, y, to);

    /// <summary><c>x[i] / y[i]</c>.</summary>
    public static void Quotient(ReadOnlySpan<double> x, ReadOnlySpan<double> y, Span<double> to) => Apply(new QuotientOf(), x, y, to);

    /// <summary>Adds every element of <paramref name="x"/> to that of <paramref name="sum"/>.</summary>
    public static void Add(ReadOnlySpan<double> x, Span<double> sum) => Apply(new SumOf(), x, sum, sum);

    /// <summary>Adds a multiple of every element of <paramref name="x"/> to that of <paramref name="sum"/>.</summary>
    public static void AddScaled(ReadOnlySpan<double> x, double scale, Span<double> sum) => Apply(new ScaledSumOf(scale), x, sum, sum);

    /// <summary>ln of every element; as Math.Log but for the last bits, -infinity for 0.</summary>
    public static void Log(ReadOnlySpan<double> x, Span<double> y) => Apply(new LogOf(), x, y);

    /// <summary>-ln P(Z &gt; z), z = slope * ln x + offset, of every element: the cumulated hazard of a lognormal.</summary>
    public static void LognormalHazard(ReadOnlySpan<double> x, double slope, double offset, Span<double> y) =>
        Apply(new LognormalHazardOf(slope, offset), x, y);

    /// <summary>
    /// <c>((x - least) / scale)^shape</c> of every element, 0 below the least: the cumulated hazard of a Weibull distribution.
    /// </summary>
    public static void WeibullHazard(ReadOnlySpan<double> x, double least, double scale, double shape, Span<double> y) =>
        Apply(new WeibullHazardOf(least, scale, shape), x, y);

    /// <summary>1 - e^-x of every element: the probability of a cumulated hazard.</summary>
    public static void Failed(ReadOnlySpan<double> x, Span<double> y) => Apply(new FailedOf(), x, y);

    private static void Apply<TFunction>(TFunction function, ReadOnlySpan<double> x, Span<double> y)
        where TFunction : struct, IFunction
    {
        int i = 0;
        for (; i <= x.Length - Width; i += Width)
        {
            function.Of(Vector512.Create(x.Slice(i, Width))).CopyTo(y.Slice(i, Width));
        }

        if (i < x.Length)
        {
            Span<double> part = stackalloc double[Width];
            part.Fill(1);
            x[i..].CopyTo(part);
            function.Of(Vector512.Create<double>(part)).CopyTo(part);
            part[..(x.Length - i)].CopyTo(y[i..]);
        }
    }

    private static void Apply<TFunction>(TFunction function, ReadOnlySpan<double> x, ReadOnlySpan<double> y, Span<double> to)
        where TFunction : struct, IFunctionOfTwo
    {
        int i = 0;
        for (; i <= to.Length - Width; i += Width)
        {
            function.Of(Vector512.Create(x.Slice(i, Width)), Vector512.Create(y.Slice(i, Width))).CopyTo(to.Slice(i, Width));
        }

        if (i < to.Length)
        {
            Span<double> parts = stackalloc double[2 * Width];
            parts.Fill(1);
            x[i..to.Length].CopyTo(parts);
            y[i..to.Length].CopyTo(parts[Width..]);
            function.Of(Vector512.Create<double>(parts[..Width]), Vector512.Create<double>(parts[Width..])).CopyTo(parts);
            parts[..(to.Length - i)].CopyTo(to[i..]);
        }
    }

    /// <summary>A function as a type, so that the loop over it is compiled for it.</summary>
    private interface IFunction
    {
        Vector512<double> Of(Vector512<double> x);
    }

    private interface IFunctionOfTwo
    {
        Vector512<double> Of(Vector512<double> x, Vector512<double> y);
    }

    private readonly struct ScaledExpOf(double slope, double scale) : IFunction
    {
        public Vector512<double> Of(Vector512<double> x) => scale * VectorExponential.Of(slope * x);
    }

    private readonly struct LognormalHazardOf(double slope, double offset) : IFunction
    {
        public Vector512<double> Of(Vector512<double> x) => VectorNormal.Hazard(slope * VectorLogarithm.Of(x) + Vector512.Create(offset));
    }

    private readonly struct WeibullHazardOf(double least, double scale, double shape) : IFunction
    {
        public Vector512<double> Of(Vector512<double> x)
        {
            Vector512<double> t = Vector512.Max(x - Vector512.Create(least), Vector512<double>.Zero) * (1 / scale);
            if (shape == 1 || Vector512.EqualsAll(t, Vector512<double>.Zero))
            {
                return t;
            }

            Vector512<double> power = VectorExponential.Of(Vector512.Max(shape * VectorLogarithm.Of(t), Vector512.Create(-700.0)));
            return Vector512.ConditionalSelect(Vector512.GreaterThan(t, Vector512<double>.Zero), power, t);
        }
    }

    private readonly struct FailedOf : IFunction
    {
        public Vector512<double> Of(Vector512<double> x) => -VectorExponential.MinusOne(-x);
    }

    private readonly struct LogisticOf(double low, double high) : IFunction
    {
        public Vector512<double> Of(Vector512<double> x)
        {
            Vector512<double> e = VectorExponential.Of(-Vector512.Abs(x));
            Vector512<double> fromEnd = (high - low) * e / (Vector512<double>.One + e);
            return Vector512.ConditionalSelect(Vector512.LessThan(x, Vector512<double>.Zero), Vector512.Create(low) + fromEnd,
                Vector512.Create(high) - fromEnd);
        }
    }

    private readonly struct LogOf : IFunction
    {
        public Vector512<double> Of(Vector512<double> x) => Vector512.Log(x);
    }

    private readonly struct LineOf(double slope, double offset) : IFunction
    {
        public Vector512<double> Of(Vector512<double> x) => Vector512.Create(offset) + (slope * x);
    }

    private readonly struct MultipleOf(double scale) : IFunction
    {
        public Vector512<double> Of(Vector512<double> x) => scale * x;
    }

    private readonly struct WithinOf(double least, double most) : IFunction
    {
        public Vector512<double> Of(Vector512<double> x) =>
            Vector512.Min(Vector512.Max(x, Vector512.Create(least)), Vector512.Create(most));
    }

    private readonly struct ProductOf(double scale) : IFunctionOfTwo
    {
        public Vector512<double> Of(Vector512<double> x, Vector512<double> y) => scale * x * y;
    }

    private readonly struct QuotientOf : IFunctionOfTwo
    {
        public Vector512<double> Of(Vector512<double> x, Vector512<double> y) => x / y;
    }

    private readonly struct ScaledSumOf(double scale) : IFunctionOfTwo
    {
        public Vector512<double> Of(Vector512<double> x, Vector512<double> y) => scale * x + y;
    }

    private readonly struct SumOf : IFunctionOfTwo
    {
        public Vector512<double> Of(Vector512<double> x, Vector512<double> y) => x + y;
    }
}
