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

    /// <summary>Fills the root of a leg's moment scale.</summary>
    public static void Fill<T>(DamageColumns columns, int first, int rows, int leg, CurveColumns curves, BatchBuffers to)
        where T : struct, IFloatLanes<T>
    {
        LegColumns l = columns.Legs[leg];
        for (int row = 0; row < rows; row += T.Count)
        {
            T speed = Load<T>(l.SpeedMPerS, first + row);

            // ms w^2, which RideCoefficients left out, and the root of Gd0 v n0^2 / centre^2 (v n0 / centre)^(w - 2)
            T perForce = Load<T>(columns.SprungMassKg, first + row) * T.Load(in curves.ScalePerForce.At(row))
                * T.Create((float)(CentreAngular * CentreAngular * ReferenceOverCentre));
            T scale = perForce * T.Sqrt(Load<T>(l.RoughnessM3, first + row) * speed);
            T waviness = Load<T>(columns.Waviness, first + row) - T.Create(2);
            if (T.AnyNonzero(waviness))
                scale *= VectorMath.Exp(T.Create(0.5f) * waviness * T.Log(speed * T.Create((float)ReferenceOverCentre)));
            T.Store(scale, ref to.ScaleRoot.At(leg * BatchBuffers.Rows + row));
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
            T seconds = Load<T>(contact, first + row) / Load<T>(speed, first + row);
            T told = T.IfLess(seconds, least, least, seconds);
            T.Store(told * T.Create((float)MomentGrid.CentreHz), ref to.Inputs.Shift(leg, row));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Load<T>(double[] column, int row)
        where T : struct, IFloatLanes<T> => T.Load(in Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(column), row));
}
