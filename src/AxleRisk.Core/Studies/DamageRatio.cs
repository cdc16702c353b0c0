using AxleRisk.Core.Modes;

namespace AxleRisk.Core.Studies;

/// <summary>
/// True over computed damage. It belongs to the damage, not to the scale of life: it may depend on other factors, and every analysis that
/// asks for damage by leg or per km gets it with the ratio in.
/// </summary>
/// <param name="source">Where its values come from.</param>
internal sealed class DamageRatio(ColumnSteps.Source source)
{
    /// <summary>Multiplies the damages of the first <paramref name="count"/> rows.</summary>
    public void Apply(double[][] values, int count, double[][] damageByLeg, double[] damagePerKm)
    {
        if (source is { IsConstant: true, Constant: 1 })
        {
            return;
        }

        for (int row = 0; row < count; row++)
        {
            double ratio = LifeModel.At(source, values, row);
            damagePerKm[row] *= ratio;
            foreach (double[] leg in damageByLeg)
            {
                leg[row] *= ratio;
            }
        }
    }
}
