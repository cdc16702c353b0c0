using AxleRisk.Core.Damage.Roads;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>What speed and roughness make of a leg, several rows at a time.</summary>
internal static class LegScales
{
    private static readonly double CentreAngular = 2 * Math.PI * MomentGrid.CentreHz;

    // The wavenumber at which roughness is stated, as a length: speed over it is a frequency.
    private static readonly double ReferenceOverCentre = Road.ReferenceWavenumber / MomentGrid.CentreHz;

    /// <summary>
    /// w^2, which with the sprung mass <see cref="RideCoefficients"/> left out, and the root of the road's n0^2 / centre^2.
    /// </summary>
    public static readonly float PerMass = (float)(CentreAngular * CentreAngular * ReferenceOverCentre);

    /// <summary>Fills the root of a leg's moment scale.</summary>
    public static void Fill<T>(DamageColumns columns, int first, int rows, int leg, SectionBuffers to)
        where T : struct, IFloatLanes<T>
    {
        for (int row = 0; row < rows; row += T.Count)
        {
            T perForce = ColumnLanes.Load<T>(columns.SprungMassKg, first + row) * T.Load(in to.Curves.ScalePerForce.At(row))
                * T.Create(PerMass);
            T.Store(OnRoad(columns, first + row, leg, perForce), ref to.ScaleRoot.At(leg * BatchBuffers.Rows + row));
        }
    }

    /// <summary>
    /// The root of the scale of the moments of <paramref name="perForce"/> times the force, <see cref="PerMass"/> and the sprung
    /// mass included.
    /// </summary>
    public static T OnRoad<T>(DamageColumns columns, int row, int leg, T perForce)
        where T : struct, IFloatLanes<T>
    {
        // The root of Gd0 v n0^2 / centre^2 (v n0 / centre)^(w - 2)
        T speed = ColumnLanes.Load<T>(columns.Legs[leg].SpeedMPerS, row);
        T scale = perForce * T.Sqrt(ColumnLanes.Load<T>(columns.Legs[leg].RoughnessM3, row) * speed);
        T waviness = ColumnLanes.Load<T>(columns.Waviness, row) - T.Create(2);
        if (T.AnyNonzero(waviness))
        {
            scale *= VectorMath.Exp(T.Create(0.5f) * waviness * T.Log(speed * T.Create((float)ReferenceOverCentre)));
        }

        return scale;
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
            T seconds = ColumnLanes.Load<T>(contact, first + row) / ColumnLanes.Load<T>(speed, first + row);
            T told = T.IfLess(seconds, least, least, seconds);
            T.Store(told * T.Create((float)MomentGrid.CentreHz), ref to.Inputs.Shift(leg, row));
        }
    }
}
