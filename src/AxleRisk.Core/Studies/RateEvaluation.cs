using System.Collections.Immutable;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// Evaluates a block where there are further modes of failure or where the vehicle ages: the rates of every mode at every age,
/// and the life as that of the mode that fails first.
/// </summary>
internal sealed class RateEvaluation
{
    private readonly ModeSet modes;
    private readonly DamageSource damage;
    private readonly AgeGrid ages;
    private readonly double requiredKm;
    private readonly ImmutableArray<ColumnSteps.Source> scatters;

    public RateEvaluation(Scenario scenario, ModeSet modes, DamageSource damage)
    {
        (this.modes, this.damage, requiredKm) = (modes, damage, scenario.RequiredKm);
        ages = modes.Ages ? AgeGrid.Over(requiredKm) : AgeGrid.Unchanged;
        scatters = [.. modes.Further.Select(m => damage.Inputs.SourceOf(m.ScatterIn(scenario)))];
    }

    /// <summary>Rates of one thread.</summary>
    public LifeRates CreateRates(int capacity) => new(modes, ages, capacity);

    /// <summary>Evaluates the first <paramref name="count"/> rows of a workspace whose columns and scale are filled.</summary>
    public void Evaluate(double[][] values, int count, Workspace workspace)
    {
        if (modes.Ages)
        {
            EvaluateAges(values, count, workspace);
        }
        else
        {
            EvaluateAged(values, count, workspace, 0, workspace.DamageByLeg, sameRide: false);
        }

        LifeRates rates = workspace.Rates!;
        if (rates.HasWalls)
        {
            rates.TakeWalls(workspace.Damage, count);
        }

        rates.FillCurves(count);
        FillMean(count, workspace, rates.Curves[0]);
        FillLives(values, count, workspace, rates);
    }

    /// <summary>Damage by leg, and the rates of every mode as those of the first age, of rows each as old as the workspace says.</summary>
    public void EvaluateAtAges(double[][] values, int count, Workspace workspace)
    {
        foreach (ref double km in workspace.AgeKm.AsSpan(0, count))
        {
            km = Math.Min(km, ages.Km[^1]); // beyond nothing changes any more
        }

        EvaluateAged(values, count, workspace, 0, workspace.DamageByLeg, sameRide: false);
    }

    private void EvaluateAged(double[][] values, int count, Workspace workspace, int age, double[][] damageByLeg, bool sameRide)
    {
        LifeRates rates = workspace.Rates!;
        var to = new DamageRates(damageByLeg, rates.Curves[0].Rates[age], rates.FurtherAtAge[age]);
        damage.Evaluate(values, count, workspace.State, workspace.AgeKm, sameRide, to);
    }

    // The oldest first, so that the workspace is left with the vehicle when new.
    private void EvaluateAges(double[][] values, int count, Workspace workspace)
    {
        foreach (double[] leg in workspace.DamageByLeg)
        {
            leg.AsSpan(0, count).Clear();
        }

        for (int age = ages.Km.Length - 1; age >= 0; age--)
        {
            EvaluateAge(age, values, count, workspace);
        }
    }

    private void EvaluateAge(int age, double[][] values, int count, Workspace workspace)
    {
        LifeRates rates = workspace.Rates!;
        workspace.AgeKm.AsSpan(0, count).Fill(ages.Km[age]);
        EvaluateAged(values, count, workspace, age, workspace.AgedByLeg, sameRide: age + 1 < ages.Km.Length && !modes.Wears);
        double weight = ages.MeanWeights[age];
        for (int leg = 0; weight > 0 && leg < workspace.AgedByLeg.Length; leg++)
        {
            double[] mean = workspace.DamageByLeg[leg];
            double[] ofAge = workspace.AgedByLeg[leg];
            VectorColumns.AddScaled(ofAge.AsSpan(0, count), weight, mean.AsSpan(0, count));
        }
    }

    // Means over the required distance; by leg they follow Simpson's rule, in the total the curve that the life follows.
    private void FillMean(int count, Workspace workspace, AgeCurve fatigue)
    {
        if (!modes.Ages)
        {
            fatigue.Rates[0].AsSpan(0, count).CopyTo(workspace.DamagePerKm);
            return;
        }

        fatigue.FillUsed(count, requiredKm, workspace.DamagePerKm);
        VectorColumns.Scale(workspace.DamagePerKm.AsSpan(0, count), 1 / requiredKm, workspace.DamagePerKm.AsSpan(0, count));

        for (int row = 0; row < count; row++)
        {
            double sum = 0;
            foreach (double[] leg in workspace.DamageByLeg)
            {
                sum += leg[row];
            }

            double part = sum > 0 && double.IsFinite(sum) ? workspace.DamagePerKm[row] / sum : 1;
            foreach (double[] leg in workspace.DamageByLeg)
            {
                leg[row] *= part;
            }
        }
    }

    private void FillLives(double[][] values, int count, Workspace workspace, LifeRates rates)
    {
        workspace.Scale.AsSpan(0, count).CopyTo(rates.Limits);
        rates.Curves[0].FillInverse(count, rates.Limits, rates.Lives);
        rates.Lives.AsSpan(0, count).CopyTo(workspace.LifeKm);
        workspace.FirstMode.AsSpan(0, count).Clear();
        for (int mode = 0; mode < scatters.Length; mode++)
        {
            LifeModel.FillColumn(scatters[mode], values, rates.Limits.AsSpan(0, count));
            rates.Curves[mode + 1].FillInverse(count, rates.Limits, rates.Lives);
            for (int row = 0; row < count; row++)
            {
                if (rates.Lives[row] < workspace.LifeKm[row])
                {
                    (workspace.LifeKm[row], workspace.FirstMode[row]) = (rates.Lives[row], mode + 1);
                }
            }
        }
    }
}
