using System.Collections.Immutable;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>What looks at one vehicle say of each row that it might be. A thread's own.</summary>
internal sealed class LooksLikelihood
{
    private readonly ImmutableArray<CrackLook> looks;
    private readonly CrackModel crack;
    private readonly double[] used;
    private CrackDepth depth;

    /// <summary>Prepares looks, by rising distance.</summary>
    public LooksLikelihood(LifeModel model, ImmutableArray<CrackLook> looks)
    {
        this.looks = looks;
        crack = new CrackModel(model);
        used = new double[looks.Length];
        if (model.Chances.IsExact)
        {
            Chance = new LookedChance(model.Scale, looks);
            Chances = model.Chances.With(Chance);
        }
    }

    /// <summary>What is left to chance of fatigue given the looks; null where it cannot be averaged.</summary>
    public LookedChance? Chance { get; }

    /// <summary>What is left to chance of all modes; null where it cannot be averaged.</summary>
    public FailureChances? Chances { get; }

    /// <summary>Takes over a row of a workspace last evaluated.</summary>
    public void Take(Workspace of, double[][] values, int row)
    {
        for (int i = 0; i < used.Length; i++)
        {
            used[i] = FailureChances.Used(0, of, row, looks[i].Km);
        }

        depth = crack.Of(values, row);
        Chance?.Take(used, depth);
    }

    /// <summary>How likely what was seen of that row is, given what fatigue can use up.</summary>
    public double Of(double limit) => LookedChance.Likelihood(used, limit, looks, depth);
}
