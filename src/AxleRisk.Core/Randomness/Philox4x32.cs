namespace AxleRisk.Core.Randomness;

/// <summary>
/// The counter-based generator Philox4x32-10 (Salmon, Moraes, Dror, Shaw 2011, Parallel random numbers: as easy as
/// 1, 2, 3): a keyed bijection of 128 bits, so any block of any stream is computed without the blocks before it.
/// <see cref="PhiloxBatch"/> computes the same blocks eight at a time.
/// </summary>
internal static class Philox4x32
{
    internal const int Rounds = 10;
    internal const uint Multiplier0 = 0xD2511F53;
    internal const uint Multiplier1 = 0xCD9E8D57;
    internal const uint Weyl0 = 0x9E3779B9;
    internal const uint Weyl1 = 0xBB67AE85;

    /// <summary>The block of four 32-bit words of a counter under a key.</summary>
    public static (uint W0, uint W1, uint W2, uint W3) Block(uint c0, uint c1, uint c2, uint c3, uint k0, uint k1)
    {
        for (int round = 0; round < Rounds; round++)
        {
            ulong product0 = (ulong)Multiplier0 * c0;
            ulong product1 = (ulong)Multiplier1 * c2;
            (c0, c1, c2, c3) = ((uint)(product1 >> 32) ^ c1 ^ k0, (uint)product1, (uint)(product0 >> 32) ^ c3 ^ k1, (uint)product0);
            k0 += Weyl0;
            k1 += Weyl1;
        }

        return (c0, c1, c2, c3);
    }

    /// <summary>The block of two 64-bit words (low halves first) of the counter (block, stream) under the 64-bit key.</summary>
    public static (ulong First, ulong Second) Block(ulong block, ulong stream, ulong key)
    {
        (uint w0, uint w1, uint w2, uint w3) = Block(
            (uint)block, (uint)(block >> 32), (uint)stream, (uint)(stream >> 32), (uint)key, (uint)(key >> 32));
        return (w0 | ((ulong)w1 << 32), w2 | ((ulong)w3 << 32));
    }
}
