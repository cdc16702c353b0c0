using System.Numerics;
using System.Runtime.CompilerServices;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>
/// The enveloping sinc^2(f s) at the points of a log-spaced grid, s = contact length over speed: a change of s is a shift along the
/// logarithm. Whole steps of the grid are an offset into the table; a part of a step is one of several phases, and linear in between.
/// </summary>
internal sealed class EnvelopingTable
{
    // Below it (contact in a point) the gain is 1 within 1e-7 up to the highest frequency.
    private const double LeastShift = 2e-6;

    private readonly int rowLength;
    private readonly int phases;
    private readonly int log2Phases;
    private readonly double substepsPerLog;
    private readonly AlignedBuffer<float> rows;

    /// <summary>Fills the table.</summary>
    /// <param name="points">Points of the grid.</param>
    /// <param name="step">Its step in ln f.</param>
    /// <param name="phases">Parts of a step, a power of two.</param>
    /// <param name="greatestShift">The greatest s, seconds.</param>
    public EnvelopingTable(int points, double step, int phases, double greatestShift)
    {
        this.phases = phases;
        log2Phases = BitOperations.Log2((uint)phases);
        GreatestLogShift = (float)Math.Log(greatestShift);
        substepsPerLog = phases / step;
        int length = (int)((GreatestLogShift - LeastLogShift) / step) + points + 1;
        rowLength = (length + 15) / 16 * 16;
        rows = new(2 * phases * rowLength);
        for (int phase = 0; phase < phases; phase++)
        {
            for (int k = 0; k < length; k++)
            {
                double value = Gain(k * phases + phase);
                rows.At(2 * phase * rowLength + k) = (float)value;
                rows.At((2 * phase + 1) * rowLength + k) = (float)(Gain(k * phases + phase + 1) - value);
            }
        }
    }

    /// <summary>ln s of the shortest shift that is told from none.</summary>
    public static double LeastLogShift { get; } = Math.Log(LeastShift);

    /// <summary>ln s of the greatest shift in the table.</summary>
    public float GreatestLogShift { get; }

    /// <summary>The gains of a shift, ln s; at most <see cref="GreatestLogShift"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Envelope Find(float logShift)
    {
        float above = logShift - (float)LeastLogShift;
        float position = (above > 0 ? above : 0) * (float)substepsPerLog;
        int substep = (int)position;
        int values = 2 * (substep & (phases - 1)) * rowLength + (substep >> log2Phases);
        return new(ref rows.At(values), ref rows.At(values + rowLength), position - substep);
    }

    private double Gain(int substep) => Enveloping.Gain(FrequencyGrid.LowestHz, LeastShift * Math.Exp(substep / substepsPerLog));
}
