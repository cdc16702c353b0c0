using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AxleRisk.Core.Numerics;

/// <summary>
/// Standard normal quantiles eight at a time, within 1e-15 of themselves: in the tails by the rational approximations PPND16 of Wichura
/// (1988, Algorithm AS 241), in the middle by one of our own of the same form over a wider range, so that few rows are in the tails.
/// </summary>
internal static class NormalQuantileBatch
{
    private const int Width = 8;

    /// <summary>Elements at a time: the places of those in the tails fit a small buffer.</summary>
    private const int Chunk = 256;

    /// <summary>Fills <paramref name="z"/> with the quantiles of <paramref name="p"/>, of the same length; may overlap exactly.</summary>
    public static void Fill(ReadOnlySpan<double> p, Span<double> z)
    {
        for (int first = 0; first < p.Length; first += Chunk)
        {
            int count = Math.Min(Chunk, p.Length - first);
            FillChunk(p.Slice(first, count), z.Slice(first, count));
        }
    }

    // |p - 1/2| up to which the middle's formula serves.
    private const double Middle = 0.475;

    // The middle 95 % in one pass; the tails, which cost more, are collected and done together in another.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void FillChunk(ReadOnlySpan<double> p, Span<double> z)
    {
        Span<double> tail = stackalloc double[Chunk + Width];
        Span<int> place = stackalloc int[Chunk];
        int tails = 0;
        int i = 0;
        for (; i <= p.Length - Width; i += Width)
        {
            Vector512<double> values = Vector512.Create(p.Slice(i, Width));
            if (Outside(values) is var outside and not 0)
            {
                tails = Append(outside, p.Slice(i, Width), i, tail, place, tails);
            }

            Central(values).CopyTo(z.Slice(i, Width));
        }

        if (i < p.Length)
        {
            // The last ones run through the same arithmetic, so a value does not depend on the batch's length.
            Span<double> part = stackalloc double[Width];
            part.Fill(0.5);
            p[i..].CopyTo(part);
            Vector512<double> values = Vector512.Create<double>(part);
            tails = Append(Outside(values), part, i, tail, place, tails);
            Central(values).CopyTo(part);
            part[..(p.Length - i)].CopyTo(z[i..]);
        }

        tail.Slice(tails, Width).Fill(0.01);
        for (int t = 0; t < tails; t += Width)
        {
            Tail(Vector512.Create(tail.Slice(t, Width))).CopyTo(tail.Slice(t, Width));
        }

        for (int t = 0; t < tails; t++)
        {
            z[place[t]] = tail[t];
        }
    }

    // Whatever the middle's formula does not serve, NaN among it.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static uint Outside(Vector512<double> p) =>
        (uint)(~Vector512.LessThanOrEqual(Vector512.Abs(p - Vector512.Create(0.5)), Vector512.Create(Middle))).ExtractMostSignificantBits();

    // Keeps the probabilities and places of the lanes outside; p and z may be one.
    private static int Append(uint outside, ReadOnlySpan<double> p, int first, Span<double> tail, Span<int> place, int tails)
    {
        for (uint left = outside; left != 0; left &= left - 1)
        {
            int lane = BitOperations.TrailingZeroCount(left);
            tail[tails] = p[lane];
            place[tails++] = first + lane;
        }

        return tails;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Tail(Vector512<double> p)
    {
        Vector512<double> isLower = Vector512.LessThan(p, Vector512.Create(0.5));
        Vector512<double> smaller = Vector512.ConditionalSelect(isLower, p, Vector512<double>.One - p);
        Vector512<double> r = Vector512.Sqrt(-Vector512.Log(smaller));
        Vector512<double> z = Near(r);
        Vector512<double> farRange = Vector512.GreaterThan(r, Vector512.Create(5.0));
        if (farRange != Vector512<double>.Zero)
        {
            z = Vector512.ConditionalSelect(farRange, Far(r), z);
            z = Vector512.ConditionalSelect(
                Vector512.Equals(smaller, Vector512<double>.Zero), Vector512.Create(double.PositiveInfinity), z);
        }

        return Vector512.ConditionalSelect(isLower, -z, z);
    }

    // Least relative error, 1.7e-16; fitted with 60 digits.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Central(Vector512<double> p)
    {
        Vector512<double> q = p - Vector512.Create(0.5);
        Vector512<double> r = Vector512.Create(Middle * Middle) - q * q;
        Vector512<double> above = Vector512.FusedMultiplyAdd(Vector512.Create(9506024.412945474), r, Vector512.Create(133953294.37933464));
        above = Vector512.FusedMultiplyAdd(above, r, Vector512.Create(274759856.47605646));
        Vector512<double> below = Vector512.FusedMultiplyAdd(Vector512.Create(20347761.322655924), r, Vector512.Create(115903051.59178084));
        below = Vector512.FusedMultiplyAdd(below, r, Vector512.Create(158542064.16240993));
        return q
            * Polynomial(above, r, 185829977.4050523, 54581029.98951107, 7945627.02186979, 610650.3245741418, 25013.236788821843,
                513.1094299784494, 4.1262399674527455)
            / Polynomial(below, r, 83260343.93851842, 20473728.729900144, 2610688.6658353037, 181104.4685187384, 6838.742348865941,
                131.32597565402625, 1);
    }

    // r = sqrt(-ln of the smaller tail) up to 5, a tail of 1.4e-11
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Near(Vector512<double> r)
    {
        r -= Vector512.Create(1.6);
        return Polynomial(r, 7.74545014278341407640e-4, 2.27238449892691845833e-2, 2.41780725177450611770e-1,
                1.27045825245236838258, 3.64784832476320460504, 5.76949722146069140550, 4.63033784615654529590,
                1.42343711074968357734)
            / Polynomial(r, 1.05075007164441684324e-9, 5.47593808499534494600e-4, 1.51986665636164571966e-2,
                1.48103976427480074590e-1, 6.89767334985100004550e-1, 1.67638483018380384940, 2.05319162663775882187, 1);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static Vector512<double> Far(Vector512<double> r)
    {
        r -= Vector512.Create(5.0);
        return Polynomial(r, 2.01033439929228813265e-7, 2.71155556874348757815e-5, 1.24266094738807843860e-3,
                2.65321895265761230930e-2, 2.96560571828504891230e-1, 1.78482653991729133580, 5.46378491116411436990,
                6.65790464350110377720)
            / Polynomial(r, 2.04426310338993978564e-15, 1.42151175831644588870e-7, 1.84631831751005468180e-5,
                7.86869131145613259100e-4, 1.48753612908506148525e-2, 1.36929880922735805310e-1, 5.99832206555887937690e-1, 1);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Polynomial(
        Vector512<double> x, double c7, double c6, double c5, double c4, double c3, double c2, double c1, double c0) =>
        Polynomial(Vector512.Create(c7), x, c6, c5, c4, c3, c2, c1, c0);

    // Coefficients from the highest power down, what comes before them summed up. Written out, because a loop over them takes
    // twice the time.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Polynomial(
        Vector512<double> sum, Vector512<double> x, double c6, double c5, double c4, double c3, double c2, double c1, double c0)
    {
        sum = Vector512.FusedMultiplyAdd(sum, x, Vector512.Create(c6));
        sum = Vector512.FusedMultiplyAdd(sum, x, Vector512.Create(c5));
        sum = Vector512.FusedMultiplyAdd(sum, x, Vector512.Create(c4));
        sum = Vector512.FusedMultiplyAdd(sum, x, Vector512.Create(c3));
        sum = Vector512.FusedMultiplyAdd(sum, x, Vector512.Create(c2));
        sum = Vector512.FusedMultiplyAdd(sum, x, Vector512.Create(c1));
        return Vector512.FusedMultiplyAdd(sum, x, Vector512.Create(c0));
    }
}
