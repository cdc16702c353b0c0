using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace AxleRisk.Core.Numerics.Vectors;

/// <summary>
/// Memory that starts on a cache line and never moves. Vector code reads whole registers: one that straddles two lines costs twice.
/// </summary>
/// <typeparam name="T">The elements' type.</typeparam>
internal sealed unsafe class AlignedBuffer<T>
    where T : unmanaged
{
    private const int LineBytes = 64;
    private readonly T[] memory;
    private readonly T* start;

    /// <summary>Allocates <paramref name="length"/> zeros.</summary>
    public AlignedBuffer(int length)
    {
        memory = GC.AllocateArray<T>(length + LineBytes / sizeof(T), pinned: true);
        nint first = Marshal.UnsafeAddrOfPinnedArrayElement(memory, 0);
        start = (T*)((first + LineBytes - 1) & -LineBytes);
        Length = length;
    }

    /// <summary>The number of elements.</summary>
    public int Length { get; }

    /// <summary>The elements.</summary>
    public Span<T> Span => new(start, Length);

    /// <summary>
    /// The element at an index, unchecked: for inner loops whose bounds are fixed by construction. The buffer must outlive the reference,
    /// which does not keep it alive.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ref T At(int index) => ref start[index];
}
