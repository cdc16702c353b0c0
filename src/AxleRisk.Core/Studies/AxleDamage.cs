using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>Damage from the axle's own model: road, ride, section, S-N curve; events and damage ratios on top.</summary>
internal sealed class AxleDamage : DamageSource
{
    private readonly ModeSet modes;
    private readonly ColumnAssembly assembly;
    private readonly SnCurve[] curves;
    private readonly CountingMethod method;
    private readonly EventRates events;
    private readonly DamageRatio damageRatio;

    /// <summary>Prepares a scenario on the columns of some factors.</summary>
    public AxleDamage(Scenario scenario, FactorSet factors, ModeSet modes)
    {
        this.modes = modes;
        assembly = new ColumnAssembly(scenario, factors, modes);
        damageRatio = new DamageRatio(scenario, assembly);
        curves = [.. DetailCurves.All(scenario.Detail).Select(c => c.Mean)];
        method = scenario.Counting switch
        {
            CycleCounting.NarrowBand => CountingMethod.NarrowBand,
            CycleCounting.TovoBenasciutti => CountingMethod.TovoBenasciutti,
            _ => CountingMethod.Dirlik,
        };
        events = new EventRates(scenario, assembly, curves);
    }

    /// <inheritdoc/>
    public override ColumnSteps Inputs => assembly;

    /// <inheritdoc/>
    public override DamageState CreateState(int capacity)
    {
        var columns = new DamageColumns(capacity, modes.Layout);
        return new State(columns, new BatchKernel(curves, method, modes.Layout), assembly.Prepare(columns));
    }

    /// <inheritdoc/>
    public override void Begin(double[][] values, int count, DamageState state)
    {
        var axle = (State)state;
        assembly.Fill(values, axle.AssemblyInputs, axle.Columns, count);
    }

    /// <inheritdoc/>
    public override void Evaluate(double[][] values, int count, DamageState state, double[] ageKm, bool sameRide, DamageRates to)
    {
        var axle = (State)state;
        if (modes.Ages)
        {
            assembly.FillAged(values, axle.AssemblyInputs, axle.Columns, count, ageKm);
        }

        axle.Kernel.Evaluate(axle.Columns, count, to.ByLeg, to.Total.AsSpan(0, count), to.Further, sameRide);
        events.Add(values, count, axle.Columns, to.ByLeg, to.Total, to.Further);
        damageRatio.Apply(values, count, to.ByLeg, to.Total);
    }

    /// <summary>
    /// The events of the first row last evaluated: leg, name, number a km of the leg, damage per km of the use without ratios.
    /// </summary>
    public IEnumerable<(int Leg, string Name, double PerKm, double DamagePerKm)> EventsOfFirstRow(
        double[][] values, DamageColumns columns) => events.OfFirstRow(values, columns);

    /// <summary>Stress and cycle rates of each leg in the first row last evaluated, when new; the damage ratio is left out.</summary>
    /// <param name="columns">The columns.</param>
    /// <param name="strikes">Whether with what strikes on a bump stop add.</param>
    public LegDetail[] DetailsOfFirstRow(DamageColumns columns, bool strikes) =>
        ScalarKernel.LegDetails(columns, 0, curves, method, strikes);

    /// <summary>What the reference in time must know of the first row last evaluated.</summary>
    public (SnCurve Curve, CountingMethod Method) FatigueOfFirstRow(DamageColumns columns) => (curves[(int)columns.Category[0]], method);

    private sealed class State(DamageColumns columns, BatchKernel kernel, double[][][] assemblyInputs) : DamageState
    {
        public override DamageColumns Columns => columns;

        public BatchKernel Kernel => kernel;

        /// <summary>The input columns of the assembly's steps, from <see cref="ColumnSteps.Prepare"/>.</summary>
        public double[][][] AssemblyInputs => assemblyInputs;
    }
}
