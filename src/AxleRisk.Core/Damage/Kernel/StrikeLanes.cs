using System.Runtime.CompilerServices;
using AxleRisk.Core.Damage.BumpStops;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary><see cref="StrikeLoad"/> and <see cref="StrikeDamage"/> of several rows.</summary>
/// <typeparam name="T">The lanes.</typeparam>
internal readonly struct StrikeLanes<T>
    where T : struct, IFloatLanes<T>
{
    private readonly T perSecond;
    private readonly T mean;
    private readonly T residual;
    private readonly T slowing;
    private readonly T squaredPerEnergy;
    private readonly T forcePerEnergy;

    private StrikeLanes(LegForces loads, int row, T strikes, T level)
    {
        Any = true;
        T one = T.Create(1);
        T stop = loads.Of<T>(LegForces.StopRate, row);
        T rate = stop / T.MultiplyAdd(T.Create((float)StrikeLoad.TyreGive), stop / loads.Of<T>(LegForces.TyreRate, row), one);
        T travel = loads.Of<T>(LegForces.Travel, row);
        T hz = loads.Of<T>(LegForces.TravelHz, row);
        T correlation = loads.Of<T>(LegForces.Correlation, row);
        T squaredFrequency = T.Create((float)(4 * Math.PI * Math.PI)) * hz * hz;
        T velocity = T.Create(2) * squaredFrequency * travel * travel;
        T share = T.Create((float)StrikeLoad.Transfer) * T.MultiplyAdd(T.Create((float)StrikeLoad.TransferSlope),
            correlation - T.Create(0.5f), one);
        perSecond = T.IfLess(T.Create(0), strikes, hz * VectorMath.Exp(T.Create(-0.5f) * level * level), T.Create(0));
        slowing = T.Create((float)StrikeLoad.Slowing) * level * travel * squaredFrequency;
        squaredPerEnergy = velocity * rate / loads.Of<T>(LegForces.SprungMass, row);
        forcePerEnergy = T.IfLess(T.Create(0), share, share, T.Create(0)) * rate * velocity;
        mean = correlation * level;
        T left = one - correlation * correlation;
        residual = T.Sqrt(T.IfLess(left, T.Create(1e-12f), T.Create(1e-12f), left));
    }

    /// <summary>Whether there are strikes in any lane.</summary>
    public bool Any { get; }

    /// <summary>The strikes of the rows <paramref name="row"/> and on.</summary>
    public static StrikeLanes<T> Of(LegForces loads, int row)
    {
        if (!loads.HasBumpStop)
        {
            return default;
        }

        T zero = T.Create(0);
        T one = T.Create(1);
        T level = loads.Of<T>(LegForces.Clearance, row) / loads.Of<T>(LegForces.Travel, row);
        T strikes = T.IfLess(level, T.Create((float)StrikeDamage.GreatestLevel), one, zero);
        strikes = T.IfLess(zero, loads.Of<T>(LegForces.StopRate, row), strikes, zero);
        strikes = T.IfLess(zero, loads.Of<T>(LegForces.Travel, row), strikes, zero);
        return T.AnyNonzero(strikes) ? new(loads, row, strikes, level) : default;
    }

    /// <summary>Stores the forces of the strikes, a register a point, N: the same for every section.</summary>
    public void StoreForces(ref float to)
    {
        for (int i = 0; i < StrikeLoad.Count; i++)
        {
            T.Store(ForceN(i), ref Unsafe.Add(ref to, i * T.Count));
        }
    }

    /// <summary><see cref="StrikeDamage.PerSecond"/> in units of the damage of a cycle at the knee.</summary>
    /// <param name="without">Range over the knee of the cycle that a strike makes larger.</param>
    /// <param name="perForce">Range over the knee per force, 1/N.</param>
    /// <param name="forces">The strikes' forces, of <see cref="StoreForces"/>.</param>
    /// <param name="curve">The S-N curve.</param>
    /// <param name="cutOff">Cut-off over knee.</param>
    public T DamagePerSecond<TCurve>(T without, T perForce, ref float forces, TCurve curve, T cutOff)
        where TCurve : IRangeDamage
    {
        T plain = curve.OfRange(without, cutOff);
        T sum = T.Create(0);
        for (int i = 0; i < StrikeLoad.Count; i++)
        {
            T range = T.MultiplyAdd(perForce, T.Load(in Unsafe.Add(ref forces, i * T.Count)), without);
            sum += T.Create((float)StrikeLoad.Weight(i)) * (curve.OfRange(range, cutOff) - plain);
        }

        return T.IfLess(T.Create(0), perSecond, perSecond * sum, T.Create(0));
    }

    /// <summary><see cref="StrikeDamage.ExceedancesPerSecond"/>.</summary>
    /// <param name="level">The level above the static force, N.</param>
    /// <param name="force">Standard deviation of the force, N.</param>
    public T Exceedances(T level, T force)
    {
        T inverse = T.Create(1) / (force * residual);
        T sum = T.Create(0);
        for (int i = 0; i < StrikeLoad.Count; i++)
        {
            T peak = T.MultiplyAdd(T.Create((float)StrikeLoad.PeakOverDamage), ForceN(i), mean * force);
            sum += T.Create((float)StrikeLoad.Weight(i)) * VectorMath.NormalUpper((level - peak) * inverse);
        }

        return T.IfLess(T.Create(0), perSecond, perSecond * sum, T.Create(0));
    }

    // StrikeLoad.ForceN in the form that loses no digits.
    private T ForceN(int point)
    {
        T energy = T.Create((float)StrikeLoad.Energy(point));
        return forcePerEnergy * energy / (T.Sqrt(T.MultiplyAdd(squaredPerEnergy, energy, slowing * slowing)) + slowing);
    }
}
