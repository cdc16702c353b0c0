using System.Runtime.CompilerServices;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// <see cref="LegLoad"/> of a tile of rows: what the modes of failure beside fatigue and the strikes on the bump stop read, a
/// column each. Those of
/// the travel are filled only where there is a bump stop.
/// </summary>
/// <param name="rows">Rows, a multiple of every width.</param>
/// <param name="hasBumpStop">Whether there is a bump stop.</param>
internal sealed class LegForces(int rows, bool hasBumpStop)
{
    // The same on all legs.
    public const int Static = 0; // static force through the section, N
    public const int SprungMass = 1; // kg
    public const int TyreRate = 2; // N/m
    public const int Clearance = 3; // m
    public const int StopRate = 4; // N/m

    // Of a leg.
    public const int Speed = 5; // m/s
    public const int ForceRoot = 6; // what turns the root of a sum into N

    // Of a surface.
    public const int Force = 7; // standard deviation of the force, N
    public const int CrossingsHz = 8; // rate of up-crossings of its mean
    public const int Travel = 9; // standard deviation of the compression, m
    public const int TravelHz = 10; // rate of up-crossings of its mean
    public const int Correlation = 11; // of force and compression

    private const int Count = 12;
    private static readonly double Centre = 2 * Math.PI * MomentGrid.CentreHz;

    private readonly AlignedBuffer<float> columns = new(Count * rows);

    /// <summary>Whether there is a bump stop, and hence travel.</summary>
    public bool HasBumpStop => hasBumpStop;

    /// <summary>The lanes of a column from a row on.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Of<T>(int column, int row)
        where T : struct, IFloatLanes<T> => T.Load(in columns.At(column * rows + row));

    /// <summary>Fills what is the same on all legs from the rows <paramref name="first"/> and on.</summary>
    public void FillRows<T>(DamageColumns from, int first, int count)
        where T : struct, IFloatLanes<T>
    {
        for (int row = 0; row < count; row += T.Count)
        {
            int at = first + row;
            T sprung = ColumnLanes.Load<T>(from.SprungMassKg, at);
            T inboard = T.Create(1) - ColumnLanes.Load<T>(from.OutboardShare, at);
            Put(Static, row, T.Create((float)RideLimits.Gravity) * T.MultiplyAdd(inboard, ColumnLanes.Load<T>(from.UnsprungMassKg, at),
                sprung));
            Put(SprungMass, row, sprung);
            Put(TyreRate, row, ColumnLanes.Load<T>(from.TyreNPerM, at));
            if (!hasBumpStop)
            {
                continue;
            }

            Put(Clearance, row, ColumnLanes.Load<T>(from.BumpClearanceM, at));
            Put(StopRate, row, ColumnLanes.Load<T>(from.BumpStopNPerM, at));
        }
    }

    /// <summary>Fills what belongs to a leg.</summary>
    public void FillLeg<T>(DamageColumns from, int first, int count, int leg)
        where T : struct, IFloatLanes<T>
    {
        for (int row = 0; row < count; row += T.Count)
        {
            Put(Speed, row, ColumnLanes.Load<T>(from.Legs[leg].SpeedMPerS, first + row));
            Put(ForceRoot, row, LegScales.OnRoad(from, first + row, leg,
                ColumnLanes.Load<T>(from.SprungMassKg, first + row) * T.Create(LegScales.PerMass)));
        }
    }

    /// <summary>Fills what belongs to a surface of that leg from its sums.</summary>
    /// <param name="sums">Those of the force, columns of <see cref="BatchBuffers.Rows"/>.</param>
    /// <param name="travel">Those of the travel.</param>
    /// <param name="inputs">The ride.</param>
    /// <param name="count">Rows.</param>
    public void FillSurface<T>(ref float sums, ref float travel, MomentInputs inputs, int count)
        where T : struct, IFloatLanes<T>
    {
        T hz = T.Create((float)MomentGrid.CentreHz);
        for (int row = 0; row < count; row += T.Count)
        {
            T force0 = T.Load(in Unsafe.Add(ref sums, row));
            T root = Of<T>(ForceRoot, row);
            Put(Force, row, root * T.Sqrt(force0));
            Put(CrossingsHz, row, hz * T.Sqrt(T.Load(in Unsafe.Add(ref sums, 2 * BatchBuffers.Rows + row)) / force0));
            if (!hasBumpStop)
            {
                continue;
            }

            T travel0 = T.Load(in Unsafe.Add(ref travel, row));
            T travel2 = T.Load(in Unsafe.Add(ref travel, BatchBuffers.Rows + row));

            // RideGains: travel = common ms^2, in phase = -common ms (ms mu (1 - phi) x - ks M), in the units of RideCoefficients.
            T spring = T.Sqrt(inputs.Column<T>(row, RideCoefficients.Inner0));
            T inertia = T.Sqrt(inputs.Column<T>(row, RideCoefficients.Inner2));
            Put(Travel, row, root * T.Create((float)(1 / (Centre * Centre))) * T.Sqrt(travel0) / Of<T>(SprungMass, row));
            Put(TravelHz, row, hz * T.Sqrt(travel2 / travel0));
            Put(Correlation, row, (spring * travel0 - inertia * travel2) / T.Sqrt(travel0 * force0));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Put<T>(int column, int row, T value)
        where T : struct, IFloatLanes<T> => T.Store(value, ref columns.At(column * rows + row));
}
