using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// What the moments of a row are made of, a column each: <see cref="RideCoefficients"/>, the road's exponent and the shift of each leg. All
/// in one buffer, so that rows can be picked out of it.
/// </summary>
/// <param name="legs">The number of legs.</param>
/// <param name="rows">Rows, a multiple of every width.</param>
internal sealed class MomentInputs(int legs, int rows)
{
    private const int Exponent = RideCoefficients.Count;
    private const int FirstShift = Exponent + 1;

    private readonly AlignedBuffer<float> columns = new((FirstShift + legs) * rows);

    /// <summary>From one column to the next.</summary>
    public int Stride => rows;

    /// <summary>The first of a row's <see cref="RideCoefficients"/>.</summary>
    public ref float Ride(int row) => ref columns.At(row);

    /// <summary>One of the <see cref="RideCoefficients"/> of the rows <paramref name="row"/> and on.</summary>
    public T Column<T>(int row, int coefficient)
        where T : struct, IFloatLanes<T> => T.Load(in columns.At(coefficient * rows + row));

    /// <summary>2 less the road's exponent.</summary>
    public ref float Waviness(int row) => ref columns.At(Exponent * rows + row);

    /// <summary>Contact length over speed on a leg in units of one over the grid's centre.</summary>
    public ref float Shift(int leg, int row) => ref columns.At((FirstShift + leg) * rows + row);

    /// <summary>Copies some rows to the start of <paramref name="to"/> and the last of them again until a register is full.</summary>
    public void Pick(ReadOnlySpan<int> places, int lanes, MomentInputs to)
    {
        int padded = (places.Length + lanes - 1) / lanes * lanes;
        for (int column = 0; column < FirstShift + legs; column++)
        {
            for (int i = 0; i < padded; i++)
            {
                to.columns.At(column * rows + i) = columns.At(column * rows + places[Math.Min(i, places.Length - 1)]);
            }
        }
    }
}
