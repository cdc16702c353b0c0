using System.Runtime.CompilerServices;
using AxleRisk.Core.Damage.BumpStops;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Yields;

/// <summary>First yield: its input and its rate, <see cref="YieldRate"/> and what strikes on the bump stop add to it.</summary>
/// <param name="capacity">The number of rows.</param>
internal sealed class YieldColumns(int capacity) : ModeColumns(capacity, 2)
{
    /// <summary>
    /// Nominal stress per unit of force, MPa/N: as <see cref="DamageColumns.StressPerForceMPaPerN"/>, without the detail's stress
    /// concentration.
    /// </summary>
    public double[] NominalStressMPaPerN => All[0];

    /// <summary>Yield strength, MPa.</summary>
    public double[] YieldMPa => All[1];

    /// <inheritdoc/>
    public override double PerKm(in LegLoad load, int row)
    {
        double k = Math.Abs(NominalStressMPaPerN[row]);
        double limit = YieldMPa[row];
        double perSecond = YieldRate.PerSecond(k * load.StaticForceN, k * k * load.Moments.Force0, k * k * load.Moments.Force2, limit);
        if (double.IsFinite(perSecond))
        {
            perSecond += StrikeDamage.ExceedancesPerSecond(load.Ride, load.Moments, load.Stop, limit / k - load.StaticForceN);
        }

        return perSecond * 1000 / load.SpeedMPerS;
    }

    /// <inheritdoc/>
    public override double OfEvent(double peakN, bool isMoment, int row) =>
        Math.Abs(NominalStressMPaPerN[row]) * peakN >= YieldMPa[row] ? 1 : 0;

    /// <inheritdoc/>
    public override void FillPerKm<T>(LegForces loads, int first, int rows, AlignedBuffer<float> perKm)
    {
        T zero = T.Create(0);
        for (int row = 0; row < rows; row += T.Count)
        {
            T k = T.Abs(ColumnLanes.Load<T>(NominalStressMPaPerN, first + row));
            T limit = ColumnLanes.Load<T>(YieldMPa, first + row);
            T force = loads.Of<T>(LegForces.Force, row);
            T still = loads.Of<T>(LegForces.Static, row);
            T spread = k * force;
            T crossings = loads.Of<T>(LegForces.CrossingsHz, row);
            T rate = crossings * (Side((limit - k * still) / spread) + Side((limit + k * still) / spread));
            var strikes = StrikeLanes<T>.Of(loads, row);
            if (strikes.Any)
            {
                rate += strikes.Exceedances(limit / k - still, force);
            }

            rate *= T.Create(1000) / loads.Of<T>(LegForces.Speed, row);
            rate = T.IfLess(force, T.Create(float.Epsilon), zero, rate);
            T.Store(T.IfLess(k * still, limit, rate, T.Create(float.PositiveInfinity)), ref perKm.At(row));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Side<T>(T level)
        where T : struct, IFloatLanes<T> => VectorMath.Exp(T.Create(-0.5f) * level * level);
}
