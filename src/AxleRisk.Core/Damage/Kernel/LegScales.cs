using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>What speed and roughness make of a leg, several rows at a time.</summary>
internal static class LegScales
{
    private static readonly double CentreAngular = 2 * Math.PI * MomentGrid.CentreHz;

    // The wavenumber at which roughness is stated, as a length: speed over it is a frequency.
    private static readonly double ReferenceOverCentre = Road.ReferenceWavenumber / MomentGrid.CentreHz;

    /// <summary>Fills inverse speed and moment scale of a leg.</summary>
    public static void Fill<T>(DamageColumns columns, int first, int rows, int leg, CurveColumns curves, BatchBuffers to)
        where T : struct, IDoubleLanes<T>
    {
        LegColumns l = columns.Legs[leg];
        for (int row = 0; row < rows; row += T.Count)
        {
            int at = leg * BatchBuffers.Rows + row;
            T speed = Load<T>(l.SpeedMPerS, first + row);
            T inverse = T.Create(1) / speed;
            T.Store(inverse, ref to.InverseSpeed.At(at));

            // (ms w^2)^2, which RideCoefficients left out, and Gd0 v n0^2 / centre^2 (v n0 / centre)^(w - 2)
            T perForce = Load<T>(columns.SprungMassKg, first + row) * T.Load(in curves.ScalePerForce.At(row))
                * T.Create(CentreAngular * CentreAngular * ReferenceOverCentre);
            T scale = perForce * perForce * Load<T>(l.RoughnessM3, first + row) * speed;
            T waviness = Load<T>(columns.Waviness, first + row) - T.Create(2);
            if (columns.Waviness.AsSpan(first + row, T.Count).ContainsAnyExcept(2.0))
                scale *= VectorMath.Exp(waviness * T.Log(speed * T.Create(ReferenceOverCentre)));
            T.Store(scale, ref to.MomentScale.At(at));
        }
    }

    /// <summary>Fills the shift of a leg's enveloping.</summary>
    public static void FillShift<T>(DamageColumns columns, int first, int rows, int leg, BatchBuffers to)
        where T : struct, IFloatLanes<T>
    {
        T least = T.Create((float)MomentGrid.LeastShiftSeconds);
        double[] contact = columns.ContactLengthM;
        double[] speed = columns.Legs[leg].SpeedMPerS;
        for (int row = 0; row < rows; row += T.Count)
        {
            T seconds = T.Load(in contact[first + row]) / T.Load(in speed[first + row]);
            T told = T.IfLess(seconds, least, least, seconds);
            T.Store(told * T.Create((float)MomentGrid.CentreHz), ref to.Inputs.Shift(leg, row));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Load<T>(double[] column, int row)
        where T : struct, IDoubleLanes<T> => T.Load(in Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(column), row));
}
