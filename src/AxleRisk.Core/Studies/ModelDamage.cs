using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>Damage from the model that a scenario brings.</summary>
internal sealed class ModelDamage(Scenario scenario, FactorSet factors, DamageModel model) : DamageSource
{
    private readonly ColumnSteps inputs = new(scenario, factors);

    /// <inheritdoc/>
    public override ColumnSteps Inputs => inputs;

    /// <inheritdoc/>
    public override DamageState CreateState(int capacity) => new State(
        new InputColumns(scenario, factors, capacity), model.CreateWorker(capacity),
        Workspace.Columns(scenario.Legs.Length, capacity));

    /// <inheritdoc/>
    public override void Begin(double[][] values, int count, DamageState state)
    {
    }

    /// <inheritdoc/>
    public override void Evaluate(double[][] values, int count, DamageState state, double[] ageKm, bool sameRide, DamageRates to)
    {
        var own = (State)state;
        own.Inputs.Take(values, count, ageKm);
        own.Worker.Evaluate(own.Inputs, own.PerKm, to.Further);
        Span<double> total = to.Total.AsSpan(0, count);
        total.Clear();
        for (int leg = 0; leg < own.PerKm.Length; leg++)
        {
            for (int row = 0; row < count; row++)
            {
                to.ByLeg[leg][row] = own.Inputs.ShareOf(leg, row) * own.PerKm[leg][row];
            }

            VectorColumns.Add(to.ByLeg[leg].AsSpan(0, count), total);
        }
    }

    private sealed class State(InputColumns inputs, DamageWorker worker, double[][] perKm) : DamageState
    {
        public InputColumns Inputs => inputs;

        public DamageWorker Worker => worker;

        public double[][] PerKm => perKm;
    }
}
