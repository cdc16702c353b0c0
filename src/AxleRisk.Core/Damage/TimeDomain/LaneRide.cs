using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.TimeDomain;

/// <summary>The ride in time, eight records at once in the lanes of a register; the tests have its slow twin.</summary>
internal sealed class LaneRide
{
    private const int Lanes = LaneFourier.Lanes;

    // Places of the constants: transition by row, input weights by state, responses beyond the linear law by state, then the laws.
    private const int Input = 16, TyreHeld = 32, TyreRising = 36, SuspensionHeld = 40, SuspensionRising = 44, Law = 48;
    private readonly AlignedBuffer<double> constants = new(64);
    private readonly RideLimits limits;

    /// <summary>Prepares a ride.</summary>
    /// <param name="ride">The ride.</param>
    /// <param name="limits">Where it stops being linear.</param>
    /// <param name="rate">Samples a second.</param>
    public LaneRide(in RideParameters ride, RideLimits limits, int rate)
    {
        this.limits = limits;
        var step = new RideStep(ride, 1.0 / rate);
        for (int k = 0; k < RideMatrix.States; k++)
        {
            for (int j = 0; j < RideMatrix.States; j++)
            {
                constants.At(4 * k + j) = step.Transition[k, j];
                constants.At(Input + 4 * k + j) = step.Input[j, k];
            }
            constants.At(TyreHeld + k) = step.TyreHeld[k];
            constants.At(TyreRising + k) = step.TyreRising[k];
            constants.At(SuspensionHeld + k) = step.SuspensionHeld[k];
            constants.At(SuspensionRising + k) = step.SuspensionRising[k];
        }
        double[] law =
        [
            ride.TyreNPerM, ride.TyreDampingNsPerM, ride.SpringNPerM, ride.DamperNsPerM, ride.OutboardShare, -limits.StaticTyreForceN,
            limits.BumpClearanceM, limits.BumpStopNPerM, -limits.ReboundClearanceM, limits.ReboundStopNPerM,
            ride.DamperNsPerM * (limits.BumpDamping - 1), ride.DamperNsPerM * (limits.ReboundDamping - 1),
            limits.LiftsOff ? -limits.StaticTyreForceN : double.NegativeInfinity,
        ];
        law.CopyTo(constants.Span[Law..]);
    }

    private interface IKind
    {
        static abstract bool IsLinear { get; }
    }

    /// <summary>Runs on from a sample.</summary>
    /// <param name="batch">The records.</param>
    /// <param name="firstRecord">The first of the eight records, 0 or 8.</param>
    /// <param name="first">The first sample.</param>
    /// <param name="count">How many samples.</param>
    /// <param name="states">The states at the first sample, by state and record of the batch; left at those after the last.</param>
    /// <param name="force">Takes the force through the section, N, by sample and lane.</param>
    /// <param name="tallies">Added to.</param>
    public void Run(
        RecordBatch batch, int firstRecord, int first, int count, AlignedBuffer<double> states, Span<double> force, LaneTallies tallies)
    {
        if (limits.IsLinear)
        {
            Run<Linear>(batch, firstRecord, first, count, states, force, tallies);
        }
        else
        {
            Run<ByPieces>(batch, firstRecord, first, count, states, force, tallies);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Run<TKind>(
        RecordBatch batch, int lanes, int first, int count, AlignedBuffer<double> states, Span<double> force, LaneTallies tallies)
        where TKind : struct, IKind
    {
        int samples = RecordGrid.Seconds * batch.Rate;
        ref double c = ref constants.At(0);
        ref double state = ref states.At(lanes);
        Vector512<double> zs = Vector512.LoadUnsafe(ref state), vs = Vector512.LoadUnsafe(ref state, RecordBatch.Records);
        Vector512<double> zu = Vector512.LoadUnsafe(ref state, 2 * RecordBatch.Records),
            vu = Vector512.LoadUnsafe(ref state, 3 * RecordBatch.Records);
        Vector512<double> before = Sample(batch, (first + samples - 1) % samples, lanes), u = Sample(batch, first, lanes);
        Vector512<double> next = Sample(batch, (first + 1) % samples, lanes);
        Vector512<double> forceSquares = Vector512<double>.Zero, tyreSquares = forceSquares;
        Vector512<double> bumps = forceSquares, rebounds = forceSquares, offGround = forceSquares;
        Vector512<double> earlier = zu - zs;
        for (int i = 0; i < count; i++)
        {
            int ahead = first + i + 2;
            Vector512<double> after = Sample(batch, ahead < samples ? ahead : ahead - samples, lanes);
            Forces f = Forces.In<TKind>(ref Unsafe.Add(ref c, Law), zs, vs, zu, vu, u);
            Vector512<double> section = f.Tyre - C(ref c, Law + 4) * (f.Tyre + f.Suspension);
            section.CopyTo(force[(i * Lanes)..]);
            Vector512<double> travel = zu - zs;
            forceSquares = Vector512.FusedMultiplyAdd(section, section, forceSquares);
            tyreSquares = Vector512.FusedMultiplyAdd(f.Tyre, f.Tyre, tyreSquares);
            bumps += Ones(Vector512.GreaterThan(travel, C(ref c, Law + 6)) & Vector512.LessThanOrEqual(earlier, C(ref c, Law + 6)));
            rebounds += Ones(Vector512.LessThan(travel, C(ref c, Law + 8)) & Vector512.GreaterThanOrEqual(earlier, C(ref c, Law + 8)));
            offGround += Ones(Vector512.LessThanOrEqual(f.Tyre, C(ref c, Law + 5)));
            earlier = travel;

            Vector512<double> zsNext = Linearly(ref c, 0, zs, vs, zu, vu, before, u, next, after);
            Vector512<double> vsNext = Linearly(ref c, 4, zs, vs, zu, vu, before, u, next, after);
            Vector512<double> zuNext = Linearly(ref c, 8, zs, vs, zu, vu, before, u, next, after);
            Vector512<double> vuNext = Linearly(ref c, 12, zs, vs, zu, vu, before, u, next, after);
            if (!TKind.IsLinear)
            {
                zsNext = Beyond(ref c, TyreHeld, SuspensionHeld, f.TyreBeyond, f.SuspensionBeyond, zsNext);
                vsNext = Beyond(ref c, TyreHeld + 1, SuspensionHeld + 1, f.TyreBeyond, f.SuspensionBeyond, vsNext);
                zuNext = Beyond(ref c, TyreHeld + 2, SuspensionHeld + 2, f.TyreBeyond, f.SuspensionBeyond, zuNext);
                vuNext = Beyond(ref c, TyreHeld + 3, SuspensionHeld + 3, f.TyreBeyond, f.SuspensionBeyond, vuNext);
                Forces predicted = Forces.In<TKind>(ref Unsafe.Add(ref c, Law), zsNext, vsNext, zuNext, vuNext, next);
                Vector512<double> tyre = predicted.TyreBeyond - f.TyreBeyond, suspension = predicted.SuspensionBeyond - f.SuspensionBeyond;
                zsNext = Beyond(ref c, TyreRising, SuspensionRising, tyre, suspension, zsNext);
                vsNext = Beyond(ref c, TyreRising + 1, SuspensionRising + 1, tyre, suspension, vsNext);
                zuNext = Beyond(ref c, TyreRising + 2, SuspensionRising + 2, tyre, suspension, zuNext);
                vuNext = Beyond(ref c, TyreRising + 3, SuspensionRising + 3, tyre, suspension, vuNext);
            }
            (zs, vs, zu, vu) = (zsNext, vsNext, zuNext, vuNext);
            (before, u, next) = (u, next, after);
        }
        zs.StoreUnsafe(ref state);
        vs.StoreUnsafe(ref state, RecordBatch.Records);
        zu.StoreUnsafe(ref state, 2 * RecordBatch.Records);
        vu.StoreUnsafe(ref state, 3 * RecordBatch.Records);
        Add(tallies.ForceSquares, forceSquares);
        Add(tallies.TyreSquares, tyreSquares);
        Add(tallies.BumpStrikes, bumps);
        Add(tallies.ReboundStrikes, rebounds);
        Add(tallies.OffGround, offGround);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Sample(RecordBatch batch, int sample, int lanes) =>
        Vector512.LoadUnsafe(ref batch.At(sample), (nuint)lanes);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> C(ref double constants, int index) => Vector512.Create(Unsafe.Add(ref constants, index));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Linearly(
        ref double c, int row, Vector512<double> zs, Vector512<double> vs, Vector512<double> zu, Vector512<double> vu,
        Vector512<double> before, Vector512<double> u, Vector512<double> next, Vector512<double> after)
    {
        Vector512<double> input = C(ref c, Input + row) * before;
        input = Vector512.FusedMultiplyAdd(C(ref c, Input + row + 1), u, input);
        input = Vector512.FusedMultiplyAdd(C(ref c, Input + row + 2), next, input);
        input = Vector512.FusedMultiplyAdd(C(ref c, Input + row + 3), after, input);
        input = Vector512.FusedMultiplyAdd(C(ref c, row), zs, input);
        input = Vector512.FusedMultiplyAdd(C(ref c, row + 1), vs, input);
        input = Vector512.FusedMultiplyAdd(C(ref c, row + 2), zu, input);
        return Vector512.FusedMultiplyAdd(C(ref c, row + 3), vu, input);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Beyond(
        ref double c, int tyreAt, int suspensionAt, Vector512<double> tyre, Vector512<double> suspension, Vector512<double> linear) =>
        Vector512.FusedMultiplyAdd(C(ref c, tyreAt), tyre, Vector512.FusedMultiplyAdd(C(ref c, suspensionAt), suspension, linear));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Ones(Vector512<double> mask) => mask & Vector512<double>.One;

    private static void Add(AlignedBuffer<double> tally, Vector512<double> value) =>
        (Vector512.LoadUnsafe(ref tally.At(0)) + value).StoreUnsafe(ref tally.At(0));

    private readonly struct Linear : IKind
    {
        public static bool IsLinear => true;
    }

    private readonly struct ByPieces : IKind
    {
        public static bool IsLinear => false;
    }

    /// <summary>The forces on the axle about their static values, upward, N, and what of them is beyond the linear law.</summary>
    private readonly record struct Forces(
        Vector512<double> Tyre, Vector512<double> TyreBeyond, Vector512<double> Suspension, Vector512<double> SuspensionBeyond)
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static Forces In<TKind>(
            ref double law, Vector512<double> zs, Vector512<double> vs, Vector512<double> zu, Vector512<double> vu, Vector512<double> u)
            where TKind : struct, IKind
        {
            Vector512<double> zero = Vector512<double>.Zero;
            Vector512<double> tyre = u - Vector512.FusedMultiplyAdd(C(ref law, 0), zu, C(ref law, 1) * vu);
            Vector512<double> compression = zu - zs, rate = vu - vs;
            Vector512<double> suspension = -Vector512.FusedMultiplyAdd(C(ref law, 2), compression, C(ref law, 3) * rate);
            if (TKind.IsLinear)
            {
                return new(tyre, zero, suspension, zero);
            }

            Vector512<double> tyreBeyond = Vector512.MaxNative(zero, C(ref law, 12) - tyre);
            Vector512<double> beyond = -Vector512.FusedMultiplyAdd(
                C(ref law, 10), Vector512.MaxNative(zero, rate), C(ref law, 11) * Vector512.MinNative(zero, rate));
            beyond -= C(ref law, 7) * Vector512.MaxNative(zero, compression - C(ref law, 6));
            beyond += C(ref law, 9) * Vector512.MaxNative(zero, C(ref law, 8) - compression);
            return new(tyre + tyreBeyond, tyreBeyond, suspension + beyond, beyond);
        }
    }
}
