using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>
/// Failure of a scenario before a distance. Of fatigue alone c = ln life - ln distance. Where several modes or ageing are averaged exactly,
/// c(u) is the number that gives P(fails before the distance | u): c = -Phi^-1 of it, so that failure is c(u) + z &lt;= 0.
/// </summary>
internal sealed class LifeLimitState(LifeModel model, double distanceKm, DiscreteState state) : FactorLimitState(model, state)
{
    private readonly double lnDistance = Math.Log(distanceKm);
    private readonly bool isMargin = model.Chances.IsExact && !model.Modes.IsPlain;

    public override double Sigma => !HasNormalPart ? 0 : isMargin ? 1 : Model.Scale.Sigma;

    protected override Margins CreateMargins(int capacity)
    {
        Workspace workspace = Model.CreateWorkspace(capacity);
        var used = new double[Model.Modes.Modes.Length];
        return (values, count, g) =>
        {
            Model.Evaluate(values, count, workspace);
            for (int row = 0; row < count; row++)
            {
                if (isMargin)
                {
                    FailureChances.FillUsed(workspace, row, distanceKm, used);
                    g[row] = Model.Chances.Margin(used);
                    continue;
                }

                double lnLife = HasNormalPart ? Model.Scale.Mu - Math.Log(workspace.DamagePerKm[row]) : Math.Log(workspace.LifeKm[row]);
                g[row] = lnLife - lnDistance;
            }
        };
    }

    protected override double[] UsedAtFailure(double[][] values)
    {
        Workspace workspace = Model.CreateWorkspace(1);
        Model.Evaluate(values, 1, workspace);
        var used = new double[Model.Modes.Modes.Length];
        FailureChances.FillUsed(workspace, 0, distanceKm, used);
        return used;
    }
}
