using System.Runtime.CompilerServices;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// Mean damage of ranges of a Weibull density by its scale, as a table of its logarithm: a cubic in each eighth of an octave, found by the
/// bits of the scale. Nearly a straight line of the logarithm, it is met within 1e-5.
/// </summary>
internal sealed class RangeTable
{
    // Of the scale over the reference: less does no damage to speak of, more is left to the scalar code.
    private const int LeastPower = -24, MostPower = 14;

    private const int PartsAnOctave = 8;
    private const int FractionBits = 23 - 3;
    private const float LeastLn = -200;
    private const float MostLn = 60;

    private static readonly int FirstBits = BitConverter.SingleToInt32Bits(MathF.ScaleB(1, LeastPower));

    private readonly float[] cubics = new float[4 * PartsAnOctave * (MostPower - LeastPower)];

    /// <summary>Tables a function.</summary>
    /// <param name="damage">Mean damage by the scale, both over the reference.</param>
    public RangeTable(Func<double, double> damage)
    {
        Span<double> at = stackalloc double[4];
        for (int part = 0; 4 * part < cubics.Length; part++)
        {
            double octave = Math.ScaleB(1, LeastPower + (part / PartsAnOctave));
            double from = octave * (1 + ((part % PartsAnOctave) / (double)PartsAnOctave));
            for (int i = 0; i < 4; i++)
            {
                at[i] = Math.Max(LeastLn, Math.Log(damage(from + (octave / PartsAnOctave * i / 3))));
            }

            // Newton's form through u = 0, 1/3, 2/3, 1, written out in powers of u.
            double first = at[1] - at[0], second = at[2] - (2 * at[1]) + at[0], third = at[3] - (3 * at[2]) + (3 * at[1]) - at[0];
            cubics[4 * part] = (float)at[0];
            cubics[(4 * part) + 1] = (float)((3 * first) - (1.5 * second) + third);
            cubics[(4 * part) + 2] = (float)((4.5 * second) - (4.5 * third));
            cubics[(4 * part) + 3] = (float)(4.5 * third);
        }
    }

    /// <summary>Fills the logarithms of the damage; NaN beyond the table.</summary>
    public void FillLn(ReadOnlySpan<float> scales, Span<float> to)
    {
        ReadOnlySpan<float> table = cubics;
        for (int row = 0; row < scales.Length; row++)
        {
            int bits = BitConverter.SingleToInt32Bits(scales[row]);
            int part = (bits - FirstBits) >> FractionBits;
            if ((uint)part < (uint)(table.Length / 4))
            {
                ReadOnlySpan<float> c = table.Slice(4 * part, 4);
                float u = (bits & ((1 << FractionBits) - 1)) * (1f / (1 << FractionBits));
                to[row] = c[0] + (u * (c[1] + (u * (c[2] + (u * c[3])))));
            }
            else
            {
                to[row] = float.NaN;
            }
        }
    }

    /// <summary>Adds a part of a range density to <paramref name="sum"/>; NaN beyond the table.</summary>
    /// <param name="parts">The parts; its buffer for the cut-off is used on the way.</param>
    /// <param name="part">Which.</param>
    /// <param name="rows">Rows.</param>
    /// <param name="sum">The damage so far.</param>
    public void Add<T>(RangeParts parts, int part, int rows, ref float sum)
        where T : struct, IFloatLanes<T>
    {
        AlignedBuffer<float> ln = parts.UpperAtCut;
        FillLn(parts.Scales(part, rows), ln.Span[..rows]);
        for (int row = 0; row < rows; row += T.Count)
        {
            ref float to = ref Unsafe.Add(ref sum, row);
            T.Store(T.MultiplyAdd(Exp(T.Load(in ln.At(row))), T.Load(in parts.Weight(part, row)), T.Load(in to)), ref to);
        }
    }

    /// <summary>The exponential, NaN where single precision is soon at its end.</summary>
    public static T Exp<T>(T ln)
        where T : struct, IFloatLanes<T> => T.IfLess(ln, T.Create(MostLn), VectorMath.Exp(ln), T.Create(float.NaN));
}
