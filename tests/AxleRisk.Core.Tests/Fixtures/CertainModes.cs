using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Tests.Fixtures;

/// <summary>
/// The three modes with everything certain but their chances, so that every answer has a closed form: Miner sum and S-N scatter are
/// lognormal together, the largest load exponential, the bearing's life follows ISO 281:2007. Invented.
/// </summary>
internal static class CertainModes
{
    /// <summary>What is left to chance in fatigue, as the standard deviation of ln life: that of the Miner sum, and of log10 N.</summary>
    public static readonly double Sigma = Math.Sqrt((0.29 * 0.29) + Math.Pow(0.20 * Math.Log(10), 2));

    public static Scenario Scenario { get; } = Of(ThreeModes.Scenario);

    /// <summary>A scenario with everything certain but the chances.</summary>
    public static Scenario Of(Scenario scenario)
    {
        Quantity[] chances = [Quantities.MinerSum, Quantities.LifeScatter, Quantities.YieldScatter, Quantities.BearingScatter];
        return scenario with
        {
            Inputs = [.. scenario.Inputs.Select(i => chances.Contains(i.Quantity) ? i : i with
            { Value = new Value.Certain(i.Value.Nominal) })]
        };
    }

    /// <summary>The rates per km of a certain vehicle when new: damage, yields, rating lives.</summary>
    public static (double Damage, double Yields, double Lives) Rates(Scenario scenario)
    {
        var model = new LifeModel(scenario);
        Workspace workspace = model.CreateWorkspace(1);
        double[][] values = model.CreateColumns(1);
        foreach (Factor factor in model.Factors.Factors)
        {
            values[factor.FirstColumn][0] = factor.Median[0];
        }

        model.Evaluate(values, 1, workspace);
        double Of(FailureMode mode) => workspace.Rates!.Of(mode)[0][0];
        return (Of(FailureMode.Fatigue), Of(YieldMode.Name), Of(BearingMode.Name));
    }

    /// <summary>
    /// Survival of what the modes have used up: normal, exponential, and reliability R with a1 = 0.05 + 0.95 (ln R / ln
    /// 0.9)^(2/3) of ISO 281:2007, solved for R.
    /// </summary>
    public static double Survival(double damage, double yields, double lives) =>
        StandardNormal.Upper(Math.Log(damage) / Sigma) * Math.Exp(-yields) * Bearing(lives);

    /// <summary>That of the bearing alone.</summary>
    public static double Bearing(double lives) => Math.Pow(0.9, Math.Pow(Math.Max(0, lives - 0.05) / 0.95, 1.5));
}
