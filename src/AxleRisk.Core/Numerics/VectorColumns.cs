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
    public static void Exp(ReadOnlySpan<double> x, Span<double> y) => Apply(x, y, Vector512.Exp);

    /// <summary>ln of every element; as Math.Log but for the last bits, -infinity for 0.</summary>
    public static void Log(ReadOnlySpan<double> x, Span<double> y) => Apply(x, y, Vector512.Log);

    private static void Apply(ReadOnlySpan<double> x, Span<double> y, Func<Vector512<double>, Vector512<double>> function)
    {
        int i = 0;
        for (; i <= x.Length - Width; i += Width)
        {
            function(Vector512.Create(x.Slice(i, Width))).CopyTo(y.Slice(i, Width));
        }

        if (i < x.Length)
        {
            Span<double> part = stackalloc double[Width];
            part.Fill(1);
            x[i..].CopyTo(part);
            function(Vector512.Create<double>(part)).CopyTo(part);
            part[..(x.Length - i)].CopyTo(y[i..]);
        }
    }
}
