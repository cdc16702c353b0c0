using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Ranking;

/// <summary>
/// What one row adds to the numerators of the Sobol' indices of failure where several modes end the life and their chances are known given
/// the factors. Two rows both survive with the product over the modes: of one survival each where the chance is not shared, of the lesser
/// where it is; of fatigue, sharing a part of its normal variance, with the bivariate normal probability.
/// </summary>
internal sealed class ModeTerms(LifeModel model)
{
    private const int Fatigue = 0;

    private readonly double requiredKm = model.Scenario.RequiredKm;

    /// <summary>Whether the ranking goes this way.</summary>
    public bool IsOn { get; } = !model.Modes.IsPlain && model.Chances.IsExact;

    private readonly int modes = model.Modes.Modes.Length;

    /// <summary>The place of the mode whose chance a factor is; -1 for any other factor.</summary>
    public int ChanceOf(Factor factor) => model.Chances.ModeOf(factor);

    /// <summary>Fills the survival of each mode of a row last evaluated, and its standardised fatigue.</summary>
    public void Fill(Workspace workspace, int row, RankTally.Outputs to)
    {
        to.Standardised[row] = model.Scale.Standardised(requiredKm, workspace.DamagePerKm[row]);
        double all = 0;
        for (int m = 0; m < modes; m++)
        {
            double hazard = model.Chances.Hazard(m, workspace, row, requiredKm);
            to.Used[m][row] = FailureChances.Used(m, workspace, row, requiredKm);
            to.Survival[m][row] = Math.Exp(-hazard);
            all += hazard;
        }

        to.Fails[row] = -NearZero.ExpMinusOne(-all);
    }

    /// <summary>The rows last evaluated in which a mode fails first, by the required distance.</summary>
    public double FirstFailures(Workspace workspace, int mode, int count)
    {
        int first = 0;
        for (int row = 0; row < count; row++)
            first += workspace.LifeKm[row] < requiredKm && workspace.FirstMode[row] == mode ? 1 : 0;
        return first;
    }

    /// <summary>The sum of the failure probabilities with a mode switched off.</summary>
    public static double FailuresWithout(RankTally.Outputs of, int mode, int count)
    {
        double sum = 0;
        for (int row = 0; row < count; row++)
        {
            double survival = 1;
            for (int m = 0; m < of.Survival.Length; m++)
                survival *= m == mode ? 1 : of.Survival[m][row];
            sum += 1 - survival;
        }

        return sum;
    }

    /// <summary>First order of a chance: two rows share it alone.</summary>
    public double ChanceFirst(RankTally.Outputs a, RankTally.Outputs b, int row, Factor factor)
    {
        double joint = 1;
        double independent = 1;
        for (int m = 0; m < modes; m++)
        {
            double product = a.Survival[m][row] * b.Survival[m][row];
            joint *= m != ChanceOf(factor) ? product
                : m == Fatigue
                    ? BothSurvive(a.Standardised[row], b.Standardised[row], model.Scale.VarianceShare(factor))
                : Math.Min(a.Survival[m][row], b.Survival[m][row]);
            independent *= product;
        }

        return joint - independent;
    }

    /// <summary>Total index of a chance: a row and itself share all else.</summary>
    public double ChanceTotal(RankTally.Outputs a, int row, Factor factor)
    {
        double joint = 1;
        double own = 1;
        for (int m = 0; m < modes; m++)
        {
            double survival = a.Survival[m][row];
            double g = a.Standardised[row];
            joint *= m != ChanceOf(factor) ? survival
                : m == Fatigue ? BothSurvive(g, g, 1 - model.Scale.VarianceShare(factor))
                : survival * survival;
            own *= survival;
        }

        return own - joint;
    }

    /// <summary>Total index of other factors: two rows share all chance.</summary>
    public double Total(RankTally.Outputs a, RankTally.Outputs mixed, int row)
    {
        double joint = 1;
        for (int m = 0; m < modes; m++)
            joint *= Math.Min(a.Survival[m][row], mixed.Survival[m][row]);
        return 0.5 * (2 - a.Fails[row] - mixed.Fails[row]) - joint;
    }

    /// <summary>The failure probability of a row with a chance held at a value in its own unit.</summary>
    public double Pinned(RankTally.Outputs a, int row, Factor factor, double value)
    {
        double survival = 1;
        for (int m = 0; m < modes; m++)
        {
            survival *= m != ChanceOf(factor) ? a.Survival[m][row]
                : m == Fatigue ? 1 - model.Scale.Hold(factor, value).FailureProbability(requiredKm, a.Damage[row])
                : a.Used[m][row] < value ? 1 : 0;
        }

        return 1 - survival;
    }

    private static double BothSurvive(double g, double h, double share) => share >= 1 - 1e-12
        ? StandardNormal.Upper(Math.Max(g, h))
        : BivariateNormal.Cumulative(-g, -h, Math.Max(0, share));
}
