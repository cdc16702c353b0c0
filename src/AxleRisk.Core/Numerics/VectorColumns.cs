using System.Runtime.Intrinsics;

namespace AxleRisk.Core.Numerics;

/// <summary>
/// Functions of whole columns, eight rows at a time. The last rows run through the same arithmetic, so a value does not
/// depend on its place. Source and target may be the same memory.
/// </summary>
internal static class VectorColumns
{
    private const int Width = 8;

    /// <summary>exp of every element; as Math.Exp but for the last bits.</summary>
    public static void Exp(ReadOnlySpan<double> x, Span<double> y) => Apply(new ScaledExpOf(1, 1), x, y);

    /// <summary><c>scale * exp(slope * x)</c> of every element.</summary>
    public static void ScaledExp(ReadOnlySpan<double> x, double slope, double scale, Span<double> y) =>
        Apply(new ScaledExpOf(slope, scale), x, y);

    /// <summary><c>offset + slope * x</c> of every element.</summary>
    public static void Line(ReadOnlySpan<double> x, double slope, double offset, Span<double> y)
    {
        int i = 0;
        for (; i <= x.Length - Width; i += Width)
        {
            (Vector512.Create(offset) + (slope * Vector512.Create(x.Slice(i, Width)))).CopyTo(y.Slice(i, Width));
        }

        for (; i < x.Length; i++)
        {
            y[i] = offset + (slope * x[i]);
        }
    }

    /// <summary>Adds every element of <paramref name="x"/> to that of <paramref name="sum"/>.</summary>
    public static void Add(ReadOnlySpan<double> x, Span<double> sum)
    {
        int i = 0;
        for (; i <= x.Length - Width; i += Width)
        {
            (Vector512.Create<double>(sum.Slice(i, Width)) + Vector512.Create(x.Slice(i, Width))).CopyTo(sum.Slice(i, Width));
        }

        for (; i < x.Length; i++)
        {
            sum[i] += x[i];
        }
    }

    /// <summary>Brings every element into a range, in place.</summary>
    public static void Clamp(Span<double> x, double least, double most)
    {
        int i = 0;
        for (; i <= x.Length - Width; i += Width)
        {
            Vector512.Min(Vector512.Max(Vector512.Create<double>(x.Slice(i, Width)), Vector512.Create(least)), Vector512.Create(most)).CopyTo(x.Slice(i, Width));
        }

        for (; i < x.Length; i++)
        {
            x[i] = Math.Min(Math.Max(x[i], least), most);
        }
    }

    /// <summary>ln of every element; as Math.Log but for the last bits, -infinity for 0.</summary>
    public static void Log(ReadOnlySpan<double> x, Span<double> y) => Apply(new LogOf(), x, y);

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

    /// <summary>A function as a type, so that the loop over it is compiled for it.</summary>
    private interface IFunction
    {
        Vector512<double> Of(Vector512<double> x);
    }

    private readonly struct ScaledExpOf(double slope, double scale) : IFunction
    {
        public Vector512<double> Of(Vector512<double> x) => scale * Vector512.Exp(slope * x);
    }

    private readonly struct LogOf : IFunction
    {
        public Vector512<double> Of(Vector512<double> x) => Vector512.Log(x);
    }
}
