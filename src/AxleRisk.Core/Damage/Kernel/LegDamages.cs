using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>From the sums of a leg to its part in the damage per km of the use, several rows at a time.</summary>
internal static class LegDamages
{
    /// <summary>Fills the damage of a leg; NaN in rows that only the scalar code serves.</summary>
    public static void Fill<T>(LegColumns leg, int first, int rows, int index, bool corrugated, CountingMethod method, CurveColumns curves, BatchBuffers to)
        where T : struct, IDoubleLanes<T>
    {
        for (int row = 0; row < rows; row += T.Count)
        {
            int at = index * BatchBuffers.Rows + row;
            T scale = T.Load(in to.MomentScale.At(at));
            T perSecond = PerSecond(ref to.Sums.At(4 * index * BatchBuffers.Rows + row), scale, row, method, curves);
            if (corrugated)
            {
                T on = PerSecond(ref to.CorrugatedSums.At(row), scale, row, method, curves);
                T share = Load<T>(leg.CorrugatedShare, first + row);
                // Not a difference times the share: where the share is 0 the plain part must come out to the last bit.
                perSecond = (T.Create(1) - share) * perSecond + share * on;
            }

            T perKm = T.Create(1000 * MomentGrid.CentreHz) * T.Load(in curves.DamageAtKnee.At(row))
                * T.Load(in to.InverseSpeed.At(at)) * Load<T>(leg.Share, first + row);
            T.Store(perSecond * perKm, ref to.Damage.At(at));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T PerSecond<T>(ref float sums, T scale, int row, CountingMethod method, CurveColumns curves)
        where T : struct, IDoubleLanes<T>
    {
        var counts = new RangeCounts<T>(
            scale * T.Load(in sums),
            scale * T.Load(in Unsafe.Add(ref sums, BatchBuffers.Rows)),
            scale * T.Load(in Unsafe.Add(ref sums, 2 * BatchBuffers.Rows)),
            scale * T.Load(in Unsafe.Add(ref sums, 3 * BatchBuffers.Rows)));
        T cutOff = T.Load(in curves.CutOffOverKnee.At(row));
        T pair = T.Load(in curves.Pair.At(row));
        T result = T.Create(double.NaN);
        for (int i = 0; i < curves.SlopePairs.Length; i++)
        {
            SlopePair slopes = curves.SlopePairs[i];
            T damage = method switch
            {
                CountingMethod.Dirlik => counts.Dirlik(cutOff, curves.HasCutOff, slopes),
                CountingMethod.NarrowBand => counts.NarrowBand(cutOff, curves.HasCutOff, slopes),
                _ => counts.TovoBenasciutti(cutOff, curves.HasCutOff, slopes),
            };
            result = T.IfLess(T.Abs(pair - T.Create(i)), T.Create(0.5), damage, result);
        }

        return result;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Load<T>(double[] column, int row)
        where T : struct, IDoubleLanes<T> => T.Load(in Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(column), row));
}
