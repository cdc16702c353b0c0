using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace AxleRisk.Core.Numerics;

/// <summary>
/// Memory that starts on a cache line and never moves. Vector code reads whole registers: one that straddles two lines costs twice.
/// </summary>
/// <typeparam name="T">The elements' type.</typeparam>
internal sealed class AlignedBuffer<T>
    where T : unmanaged
{
    private const int LineBytes = 64;
    private readonly T[] memory;
    private readonly int first;

    /// <summary>Allocates <paramref name="length"/> zeros.</summary>
    public AlignedBuffer(int length)
    {
        int spare = LineBytes / Unsafe.SizeOf<T>();
        memory = GC.AllocateArray<T>(length + spare, pinned: true);
        nint misplaced = Marshal.UnsafeAddrOfPinnedArrayElement(memory, 0) & (LineBytes - 1);
        first = misplaced == 0 ? 0 : (int)(LineBytes - misplaced) / Unsafe.SizeOf<T>();
        Length = length;
    }

    /// <summary>The number of elements.</summary>
    public int Length { get; }

    /// <summary>The elements.</summary>
    public Span<T> Span => memory.AsSpan(first, Length);

    /// <summary>The element at an index, unchecked: for inner loops whose bounds are fixed by construction.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ref T At(int index) => ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(memory), first + index);
}
