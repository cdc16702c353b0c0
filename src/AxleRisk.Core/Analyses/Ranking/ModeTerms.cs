using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Ranking;

/// <summary>
/// What one row adds to the numerators of the Sobol' indices of failure where several modes end the life and their chances are known given
/// the factors.
/// </summary>
internal sealed class ModeTerms(LifeModel model)
{
    private const int All = -1;

    private readonly double requiredKm = model.Scenario.RequiredKm;
    private readonly FailureChances chances = model.Chances;

    /// <summary>Whether the ranking goes this way.</summary>
    public bool IsOn { get; } = !model.Modes.IsPlain && model.Chances.IsExact;

    /// <summary>The place of the mode whose chance a factor is; -1 for any other factor.</summary>
    public int ChanceOf(Factor factor) => chances.ModeOf(factor);

    /// <summary>Fills the survival of each mode of a row last evaluated.</summary>
    public void Fill(Workspace workspace, int row, ModeSurvival to) => to.Fill(workspace, row, requiredKm);

    /// <summary>The sum of the failure probabilities with a mode switched off.</summary>
    public static double FailuresWithout(ModeSurvival of, int mode, int count)
    {
        double sum = 0;
        for (int row = 0; row < count; row++)
        {
            double survival = 1;
            for (int m = 0; m < of.Survival.Length; m++)
            {
                survival *= m == mode ? 1 : of.Survival[m][row];
            }

            sum += 1 - survival;
        }

        return sum;
    }

    /// <summary>First order of a chance: two rows share it alone.</summary>
    public double ChanceFirst(ModeSurvival a, ModeSurvival b, int row, Factor factor)
    {
        int shared = 1 << ChanceOf(factor);
        return a.BothSurvive(b, row, chances.ShareOfFatigue(factor), shared) - a.BothSurvive(b, row, 0, 0);
    }

    /// <summary>Total index of a chance: a row and itself share all else.</summary>
    public double ChanceTotal(ModeSurvival a, int row, Factor factor)
    {
        int others = ~(1 << ChanceOf(factor));
        return a.BothSurvive(a, row, 1, All) - a.BothSurvive(a, row, 1 - chances.ShareOfFatigue(factor), others);
    }

    /// <summary>Total index of other factors: two rows share all chance.</summary>
    public static double Total(ModeSurvival a, ModeSurvival mixed, int row) =>
        0.5 * (2 - a.Fails[row] - mixed.Fails[row]) - a.BothSurvive(mixed, row, 1, All);

    /// <summary>The failure probability of a row with a chance held at a value in its own unit.</summary>
    public double Pinned(ModeSurvival a, int row, Factor factor, double value)
    {
        int held = ChanceOf(factor);
        double survival = chances.Holding(factor, value).Survival(a.Used[held][row]);
        for (int mode = 0; mode < a.Survival.Length; mode++)
        {
            survival *= mode == held ? 1 : a.Survival[mode][row];
        }

        return 1 - survival;
    }
}
