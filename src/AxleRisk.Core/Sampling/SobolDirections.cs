namespace AxleRisk.Core.Sampling;

/// <summary>The generating matrices of the Sobol' sequence, as columns of 64 bits.</summary>
internal static class SobolDirections
{
    /// <summary>Columns kept of each dimension: sample numbers have so many bits.</summary>
    public const int Bits = 52;

    private static readonly ulong[][] Reversed = [VanDerCorput(), .. JoeKuoTable.Rows.Select(Columns)];

    /// <summary>The number of dimensions.</summary>
    public static int Dimensions => Reversed.Length;

    /// <summary>
    /// The columns of a dimension, from 0, each with its bits in reverse: bit 0 is worth 1/2. The scrambling works on this
    /// form.
    /// </summary>
    public static ReadOnlySpan<ulong> ReversedColumns(int dimension) => Reversed[dimension];

    private static ulong[] VanDerCorput() => [.. Enumerable.Range(0, Bits).Select(i => 1ul << i)];

    // Bratley and Fox 1988 (Algorithm 659), for v_i = m_i / 2^i: v_i = a_1 v_{i-1} + .. + a_{s-1} v_{i-s+1} + v_{i-s} +
    // v_{i-s} / 2^s, + being exclusive or. In reverse a division is a shift to the left.
    private static ulong[] Columns(ushort[] row)
    {
        int s = row[0], a = row[1];
        ulong[] v = new ulong[Bits];
        for (int i = 0; i < Bits; i++)
        {
            if (i < s)
            {
                v[i] = Reverse(row[2 + i], i + 1);
                continue;
            }

            v[i] = v[i - s] ^ (v[i - s] << s);
            for (int k = 1; k < s; k++)
            {
                if (((a >> (s - 1 - k)) & 1) == 1)
                {
                    v[i] ^= v[i - k];
                }
            }
        }

        return v;
    }

    private static ulong Reverse(ulong x, int bits)
    {
        ulong reversed = 0;
        for (int i = 0; i < bits; i++)
        {
            reversed |= ((x >> i) & 1) << (bits - 1 - i);
        }

        return reversed;
    }
}
