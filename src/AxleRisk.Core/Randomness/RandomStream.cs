using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AxleRisk.Core.Randomness;

/// <summary>
/// One named stream of random numbers with random access: a number depends on the seed, the name and the sample number
/// alone, never on the numbers drawn before it, so blocks, threads and parts of a run all see the same samples.
/// </summary>
internal readonly struct RandomStream
{
    private readonly ulong seed;
    private readonly ulong name;

    /// <summary>The stream of a key: the seed keys the generator, a stable hash of the name is the upper half of its counter.</summary>
    public RandomStream(StreamKey key)
    {
        seed = key.Seed;
        name = key.Hash;
    }

    /// <summary>
    /// The random word of a sample number, 0 or above, in one of many independent lanes; lane 0 is the one
    /// <see cref="FillUnit"/> reads.
    /// </summary>
    public ulong Word(long sampleNumber, int lane)
    {
        // Sixteen samples share eight blocks: the first words of the eight, then the second words. So the batch below
        // writes its vectors as they are.
        ulong block = (((ulong)sampleNumber >> 4) << 3) | ((ulong)sampleNumber & 7);
        (ulong first, ulong second) = Philox4x32.Block(block, StreamOf(lane), seed);
        return (sampleNumber & 8) == 0 ? first : second;
    }

    /// <summary>The random words of the sample numbers 0 to 7 in a lane.</summary>
    public Vector512<ulong> FirstWords(int lane) => PhiloxBatch.Blocks(0, StreamOf(lane), seed).First;

    /// <summary>Fills <paramref name="u"/> with the values in (0, 1) of the sample numbers from <paramref name="first"/> on.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The first sample number is negative.</exception>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void FillUnit(long first, Span<double> u)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        ulong batch = (ulong)first / PhiloxBatch.Words;
        int skipped = (int)(first % PhiloxBatch.Words);
        Span<double> part = stackalloc double[PhiloxBatch.Words];
        if (skipped > 0)
        {
            FillBatch(batch++, part);
            ReadOnlySpan<double> head = part[skipped..];
            head = head[..Math.Min(head.Length, u.Length)];
            head.CopyTo(u);
            u = u[head.Length..];
        }

        while (u.Length >= PhiloxBatch.Words)
        {
            FillBatch(batch++, u);
            u = u[PhiloxBatch.Words..];
        }

        if (u.Length > 0)
        {
            FillBatch(batch, part);
            part[..u.Length].CopyTo(u);
        }
    }

    private ulong StreamOf(int lane) => lane == 0 ? name : StableHash.Mix(name + (ulong)(uint)lane * StableHash.Golden);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void FillBatch(ulong batch, Span<double> u)
    {
        (Vector512<ulong> firstWords, Vector512<ulong> secondWords) = PhiloxBatch.Blocks(batch, name, seed);
        UnitInterval.FromWords(firstWords).CopyTo(u);
        UnitInterval.FromWords(secondWords).CopyTo(u[8..]);
    }
}
