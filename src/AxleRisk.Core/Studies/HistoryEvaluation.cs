using System.Collections.Immutable;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// Evaluates a block of a scenario with a history: each stretch as a scenario of its own on the same factor columns, what each mode
/// uses up summed over them. The damage per km is the mean over the required distance.
/// </summary>
internal sealed class HistoryEvaluation
{
    private readonly ImmutableArray<(double FromKm, double ToKm, LifeModel Model)> stretches;
    private readonly double requiredKm;
    private readonly FirstFailures lives;

    /// <summary>Prepares the stretches of a scenario.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="factors">The factors whose columns will be handed over.</param>
    /// <param name="lives">Finds the lives.</param>
    public HistoryEvaluation(Scenario scenario, FactorSet factors, FirstFailures lives)
    {
        (requiredKm, this.lives) = (scenario.RequiredKm, lives);
        stretches = [.. Stretches.Of(scenario).Select(s => (s.FromKm, s.ToKm, new LifeModel(s.Scenario, factors)))];
    }

    /// <summary>The last stretch.</summary>
    public LifeModel Last => stretches[^1].Model;

    /// <summary>Buffers of one thread; the columns of the last stretch stand for the whole.</summary>
    public Workspace CreateWorkspace(int capacity)
    {
        Workspace[] own = [.. stretches.Select(s => s.Model.CreateWorkspace(capacity))];
        return new(
            capacity, Last.Factors.ColumnNames.Length, Last.Scenario.Legs.Length, own[^1].State,
            Join([.. own.Select(w => w.Rates!)], capacity))
        { Stretches = [.. own] };
    }

    /// <summary>Rates of <paramref name="capacity"/> rows.</summary>
    public LifeRates CreateRates(int capacity) => Join([.. stretches.Select(s => s.Model.CreateRates(capacity)!)], capacity);

    private LifeRates Join(ImmutableArray<LifeRates> rates, int capacity) => new(rates, [.. stretches.Select(s => s.FromKm)], capacity);

    /// <summary>Evaluates the first <paramref name="count"/> rows of a workspace whose scale is filled.</summary>
    public void Evaluate(double[][] values, int count, Workspace workspace)
    {
        foreach (double[] leg in workspace.DamageByLeg)
        {
            leg.AsSpan(0, count).Clear();
        }

        Span<double> mean = workspace.DamagePerKm.AsSpan(0, count);
        mean.Clear();
        for (int place = 0; place < stretches.Length; place++)
        {
            (double fromKm, double toKm, LifeModel model) = stretches[place];
            Workspace own = workspace.Stretches[place];
            model.Evaluate(values, count, own);
            double weight = (Math.Min(toKm, requiredKm) - fromKm) / requiredKm;
            if (!(weight > 0))
            {
                continue;
            }

            VectorColumns.AddScaled(own.DamagePerKm.AsSpan(0, count), weight, mean);
            for (int leg = 0; leg < own.DamageByLeg.Length; leg++)
            {
                VectorColumns.AddScaled(own.DamageByLeg[leg].AsSpan(0, count), weight, workspace.DamageByLeg[leg].AsSpan(0, count));
            }
        }

        workspace.Rates!.JoinCurves(count);
        lives.Fill(values, count, workspace);
    }
}
