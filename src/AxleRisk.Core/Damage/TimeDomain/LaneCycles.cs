using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.TimeDomain;

/// <summary>
/// The cycles of eight force records at once: turning points are found in the lanes of a register, refined by the parabola through three
/// samples, and counted one by one.
/// </summary>
internal sealed class LaneCycles
{
    private const int Lanes = LaneFourier.Lanes;

    // The two samples before a block stand in front of it.
    private const int Before = 2;
    private readonly AlignedBuffer<double> rows;
    private readonly AlignedBuffer<double> directions = new(Lanes);
    private readonly Rainflow<MinerSum>[] rainflows;
    private bool started;

    /// <summary>Counts blocks of up to <paramref name="blockSize"/> samples.</summary>
    public LaneCycles(int blockSize, MinerSum sum)
    {
        rows = new AlignedBuffer<double>((Before + blockSize) * Lanes);
        rainflows = [.. Enumerable.Range(0, Lanes).Select(_ => new Rainflow<MinerSum>(sum))];
    }

    /// <summary>Where the next block is written, by sample and lane.</summary>
    public Span<double> Block => rows.Span[(Before * Lanes)..];

    /// <summary>Counts the first <paramref name="count"/> samples of <see cref="Block"/>.</summary>
    public void CountBlock(int count)
    {
        if (!started)
        {
            started = true;
            for (int lane = 0; lane < Lanes; lane++)
            {
                rainflows[lane].AddTurningPoint(Block[lane]);
            }

            for (int before = 0; before < Before; before++)
            {
                Block[..Lanes].CopyTo(rows.Span[(before * Lanes)..]);
            }
        }
        FindTurningPoints(count);
        rows.Span.Slice(count * Lanes, Before * Lanes).CopyTo(rows.Span);
    }

    /// <summary>Ends the records: adds the half cycles that are left, and fills the damage of each.</summary>
    public void End(Span<double> damage)
    {
        for (int lane = 0; lane < Lanes; lane++)
        {
            rainflows[lane].AddTurningPoint(rows.At(Lanes + lane));
            rainflows[lane].End();
            damage[lane] = rainflows[lane].Sink.Damage;
        }
    }

    // A block's last sample is only known to turn, or not, with the next block: the samples tested are those before the newest.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void FindTurningPoints(int count)
    {
        Vector512<double> direction = Vector512.LoadUnsafe(ref directions.At(0));
        Vector512<double> last = Vector512.LoadUnsafe(ref rows.At(Lanes));
        for (int row = Before; row < Before + count; row++)
        {
            Vector512<double> sample = Vector512.LoadUnsafe(ref rows.At(row * Lanes));
            Vector512<double> step = sample - last;
            ulong turns = Vector512.LessThan(step * direction, Vector512<double>.Zero).ExtractMostSignificantBits();
            while (turns != 0)
            {
                int lane = BitOperations.TrailingZeroCount(turns);
                int at = (row - 1) * Lanes + lane;
                rainflows[lane].AddTurningPoint(Vertex(rows.At(at - Lanes), rows.At(at), rows.At(at + Lanes)));
                turns &= turns - 1;
            }
            direction = Vector512.ConditionalSelect(Vector512.Equals(step, Vector512<double>.Zero), direction, step);
            last = sample;
        }
        direction.StoreUnsafe(ref directions.At(0));
    }

    /// <summary>The turning point of the parabola through three even samples of which the middle one is the outermost.</summary>
    internal static double Vertex(double before, double middle, double after)
    {
        // On a plateau the sample itself is the turning point.
        if (before == middle)
        {
            return middle;
        }

        double slope = after - before;
        return middle - slope * slope / (8 * (before - 2 * middle + after));
    }
}
