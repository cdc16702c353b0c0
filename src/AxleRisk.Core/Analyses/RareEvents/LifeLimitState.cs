using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>Failure of a scenario before a distance: g = ln life - ln distance.</summary>
internal sealed class LifeLimitState(LifeModel model, double distanceKm, DiscreteState state) : FactorLimitState(model, state)
{
    private readonly double lnDistance = Math.Log(distanceKm);

    public override double Sigma => HasNormalPart ? Model.Scale.Sigma : 0;

    protected override Margins CreateMargins(int capacity)
    {
        Workspace workspace = Model.CreateWorkspace(capacity);
        return (values, count, g) =>
        {
            Model.Evaluate(values, count, workspace);
            for (int row = 0; row < count; row++)
            {
                double lnLife = HasNormalPart ? Model.Scale.Mu - Math.Log(workspace.DamagePerKm[row]) : Math.Log(workspace.LifeKm[row]);
                g[row] = lnLife - lnDistance;
            }
        };
    }
}
