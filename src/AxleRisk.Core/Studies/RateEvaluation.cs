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
    private readonly double meanFromKm;
    private readonly double meanToKm;
    private readonly FirstFailures lives;

    public RateEvaluation(Scenario scenario, ModeSet modes, DamageSource damage, FirstFailures lives)
    {
        (this.modes, this.damage, this.lives) = (modes, damage, lives);
        ages = AgeGrid.Of(modes.Ages, scenario.RequiredKm, scenario.Age);
        meanFromKm = scenario.Age?.FromKm ?? 0;
        meanToKm = Math.Min(scenario.Age?.ToKm ?? double.PositiveInfinity, scenario.RequiredKm);
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
        FillMean(count, workspace, rates);
        lives.Fill(values, count, workspace);
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
        var to = new DamageRates(damageByLeg, rates.OfFatigue[age], rates.FurtherAtAge[age]);
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
        for (int leg = 0; weight != 0 && leg < workspace.AgedByLeg.Length; leg++)
        {
            double[] mean = workspace.DamageByLeg[leg];
            double[] ofAge = workspace.AgedByLeg[leg];
            VectorColumns.AddScaled(ofAge.AsSpan(0, count), weight, mean.AsSpan(0, count));
        }
    }

    // Means over the required distance, or as much of a stretch as lies in it; by leg they follow Simpson's rule, in the total the curve
    // that the life follows.
    private void FillMean(int count, Workspace workspace, LifeRates rates)
    {
        Span<double> mean = workspace.DamagePerKm.AsSpan(0, count);
        if (!modes.Ages || !(meanToKm > meanFromKm))
        {
            rates.OfFatigue[0].AsSpan(0, count).CopyTo(mean);
        }
        else
        {
            rates.Curves[0].FillUsed(count, meanToKm, mean);
            VectorColumns.Scale(mean, 1 / (meanToKm - meanFromKm), mean);
        }

        if (!modes.Ages)
        {
            return;
        }

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
}
