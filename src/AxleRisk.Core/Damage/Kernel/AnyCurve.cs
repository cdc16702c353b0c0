using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// An S-N curve of any lines as the batch wants it: the damage of ranges by table, that of one cycle by its power. All is over the
/// reference: the first knee, or on a curve of one line the range of 1e7 cycles.
/// </summary>
internal sealed class AnyCurve : IRangeDamage
{
    private const double ReferenceCycles = 1e7;

    private readonly ImmutableArray<(float From, float Slope, float LnDamage)> pieces;

    /// <summary>Makes the tables.</summary>
    public AnyCurve(SnCurve curve)
    {
        SnConstants constants = curve.Constants;
        double reference = ReferenceOf(curve);
        double damage = DamageAtReference(curve);
        pieces = [.. constants.Pieces.Select((p, i) => (
            i < curve.KneesMPa.Length ? (float)(p.FromMPa / reference) : 0, (float)p.Slope,
            (float)(Math.Log(p.Damage / damage) + (p.Slope * Math.Log(reference)))))];
        Exponential = new RangeTable(q => WeibullRanges.DamagePerCycle(q * reference, 1, constants) / damage);
        Rayleigh = new RangeTable(q => WeibullRanges.DamagePerCycle(q * reference, 2, constants) / damage);
    }

    /// <summary>Mean damage of exponential ranges by their scale.</summary>
    public RangeTable Exponential { get; }

    /// <summary>Mean damage of Rayleigh ranges by their scale.</summary>
    public RangeTable Rayleigh { get; }

    /// <summary>The stress range that all is told over, MPa.</summary>
    public static double ReferenceOf(SnCurve curve) => curve.KneesMPa is [var knee, ..] ? knee : curve.Lines[0].RangeMPa(ReferenceCycles);

    /// <summary>The damage of a cycle of that range.</summary>
    public static double DamageAtReference(SnCurve curve) =>
        Math.Pow(10, curve.Lines[0].Slope * Math.Log10(ReferenceOf(curve)) - curve.Lines[0].Log10A);

    /// <inheritdoc/>
    public T OfRange<T>(T range, T cutOff)
        where T : struct, IFloatLanes<T>
    {
        T ln = T.Log(range);
        T damage = T.Create(0);
        for (int i = pieces.Length - 1; i >= 0; i--)
        {
            (float from, float slope, float lnDamage) = pieces[i];
            damage = T.IfLess(range, T.Create(from), damage, RangeTable.Exp(T.MultiplyAdd(T.Create(slope), ln, T.Create(lnDamage))));
        }

        return T.IfLess(range, cutOff, T.Create(0), damage);
    }
}
