using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// A range density as a sum of up to three parts, in columns: an exponential and two Rayleigh ones, each with a weight (cycles
/// per second in
/// units of the grid's centre) and a scale over the range at the knee. What every counting method comes down to.
/// </summary>
/// <param name="rows">Rows.</param>
internal sealed class RangeParts(int rows)
{
    /// <summary>Part 0 is exponential; all others are Rayleigh.</summary>
    public const int Exponential = 0;

    /// <summary>The first Rayleigh part.</summary>
    public const int FirstRayleigh = 1;

    /// <summary>The number of parts.</summary>
    public const int Count = 3;

    private readonly AlignedBuffer<float> weights = new(Count * rows);
    private readonly AlignedBuffer<float> scales = new(Count * rows);
    private readonly AlignedBuffer<float> inverses = new(Count * rows);

    /// <summary>Damage of a cycle's ranges above the cut-off at the slope below the knee, of the part at work.</summary>
    public AlignedBuffer<float> UpperAtCut { get; } = new(rows);

    /// <summary>The same of the ranges below the cut-off; only where the scale is far above the knee.</summary>
    public AlignedBuffer<float> LowerAtCut { get; } = new(rows);

    /// <summary>Weight of a part.</summary>
    public ref float Weight(int part, int row) => ref weights.At(part * rows + row);

    /// <summary>Scale of a part.</summary>
    public ref float Scale(int part, int row) => ref scales.At(part * rows + row);

    /// <summary>The scales of a part.</summary>
    public ReadOnlySpan<float> Scales(int part, int count) => scales.Span.Slice(part * rows, count);

    /// <summary>One over the scale.</summary>
    public ref float Inverse(int part, int row) => ref inverses.At(part * rows + row);

    /// <summary>
    /// Takes over a part of another density with other scales; in rows where the ratio of the scales is no number nothing is taken.
    /// </summary>
    /// <param name="from">The other.</param>
    /// <param name="part">The part.</param>
    /// <param name="count">Rows.</param>
    /// <param name="ratio">These scales over the other's.</param>
    /// <param name="inverse">One over that.</param>
    public void TakeScaled<T>(RangeParts from, int part, int count, AlignedBuffer<float> ratio, AlignedBuffer<float> inverse)
        where T : struct, IFloatLanes<T>
    {
        T least = T.Create(-1); // a ratio of 0 is one
        for (int row = 0; row < count; row += T.Count)
        {
            T times = T.Load(in ratio.At(row));
            T over = T.Load(in inverse.At(row));
            Put(
                part, row,
                T.IfLess(least, times, T.Load(in from.Weight(part, row)), T.Load(in Weight(part, row))),
                T.IfLess(least, times, T.Load(in from.Scale(part, row)) * times, T.Load(in Scale(part, row))),
                T.IfLess(least, times, T.Load(in from.Inverse(part, row)) * over, T.Load(in Inverse(part, row))));
        }
    }

    /// <summary>Stores a part.</summary>
    public void Put<T>(int part, int row, T weight, T scale, T inverse)
        where T : struct, IFloatLanes<T>
    {
        T.Store(weight, ref Weight(part, row));
        T.Store(scale, ref Scale(part, row));
        T.Store(inverse, ref Inverse(part, row));
    }
}
