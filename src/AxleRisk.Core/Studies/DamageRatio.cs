using System.Collections.Immutable;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// True over computed damage, of the whole use and of each leg. It belongs to the damage, not to the scale of life: it may depend on other
/// factors, and every analysis that asks for damage by leg or per km gets it with the ratios in.
/// </summary>
internal sealed class DamageRatio
{
    private readonly ColumnSteps.Source ofUse;
    private readonly ImmutableArray<ColumnSteps.Source?> ofLegs;

    /// <summary>The ratios of a scenario.</summary>
    public DamageRatio(Scenario scenario, ColumnSteps assembly)
    {
        ofUse = assembly.SourceOf(Quantities.DamageRatio);
        ofLegs =
        [
            .. scenario.Legs.Select((_, leg) => scenario.Find(Quantities.LegDamageRatio, leg) is null
                ? (ColumnSteps.Source?)null : assembly.SourceOf(Quantities.LegDamageRatio, leg)),
        ];
    }

    /// <summary>Multiplies the damages of the first <paramref name="count"/> rows.</summary>
    public void Apply(double[][] values, int count, double[][] damageByLeg, double[] damagePerKm)
    {
        ApplyByLeg(values, count, damageByLeg, damagePerKm);
        if (ofUse is { IsConstant: true, Constant: 1 })
        {
            return;
        }

        for (int row = 0; row < count; row++)
        {
            double ratio = LifeModel.At(ofUse, values, row);
            damagePerKm[row] *= ratio;
            foreach (double[] leg in damageByLeg)
            {
                leg[row] *= ratio;
            }
        }
    }

    private void ApplyByLeg(double[][] values, int count, double[][] damageByLeg, double[] damagePerKm)
    {
        if (ofLegs.All(l => l is null))
        {
            return;
        }

        Span<double> sum = damagePerKm.AsSpan(0, count);
        sum.Clear();
        for (int leg = 0; leg < damageByLeg.Length; leg++)
        {
            double[] damage = damageByLeg[leg];
            for (int row = 0; ofLegs[leg] is { } ratio && row < count; row++)
            {
                damage[row] *= LifeModel.At(ratio, values, row);
            }

            VectorColumns.Add(damage.AsSpan(0, count), sum);
        }
    }
}
