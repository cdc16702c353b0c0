using System.Collections.Immutable;
using AxleRisk.Core.Damage;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// Adds to an evaluated block what is more than plain fatigue of a vehicle that stays as it is: strikes on the bump stop, further modes,
/// ageing. The life becomes that of the mode that fails first.
/// </summary>
internal sealed class ModeEvaluation
{
    private readonly Scenario scenario;
    private readonly DamageRatio damageRatio;
    private readonly ModeSet modes;
    private readonly SnCurve[] curves;
    private readonly ImmutableArray<ColumnAssembly> aged;
    private readonly double[] agesKm;
    private readonly ColumnAssembly.Source yieldScatter;
    private readonly ColumnAssembly.Source bearingScatter;

    public ModeEvaluation(Scenario scenario, FactorSet factors, ModeSet modes, SnCurve[] curves, DamageRatio damageRatio)
    {
        (this.scenario, this.modes, this.curves, this.damageRatio) = (scenario, modes, curves, damageRatio);
        agesKm = [.. modes.AgesKm];
        aged = [.. agesKm.Skip(1).Select(km => new ColumnAssembly(scenario, factors, km))];
        var assembly = new ColumnAssembly(scenario, factors);
        yieldScatter = assembly.SourceOf(Quantities.YieldScatter);
        bearingScatter = assembly.SourceOf(Quantities.BearingScatter);
    }

    /// <summary>Buffers of one thread.</summary>
    public ModeBuffers CreateBuffers(int capacity)
    {
        var columns = new (DamageColumns, double[][][])[aged.Length];
        for (int k = 0; k < aged.Length; k++)
        {
            var ofAge = new DamageColumns(capacity, scenario.Legs.Length, modes: true);
            columns[k] = (ofAge, aged[k].Prepare(ofAge));
        }

        return new ModeBuffers(new ModeKernel(modes.Switches, curves), columns, scenario.Legs.Length, capacity);
    }

    /// <summary>Completes the first <paramref name="count"/> rows of a workspace that plain fatigue has been evaluated in.</summary>
    public void Complete(double[][] values, int count, Workspace workspace, ModeBuffers buffers)
    {
        Fill(values, workspace.Damage, 0, count, workspace.DamageByLeg, workspace.DamagePerKm, buffers);
        for (int k = 1; k < agesKm.Length; k++)
        {
            (DamageColumns columns, double[][][] inputs) = buffers.Aged[k - 1];
            aged[k - 1].Fill(values, inputs, columns, count);
            double[] damage = buffers.Rates.Of(FailureMode.Fatigue)[k];
            workspace.Kernel.Evaluate(columns, count, buffers.DamageByLeg, damage.AsSpan(0, count));
            Fill(values, columns, k, count, buffers.DamageByLeg, damage, buffers);
            AddToMean(k, count, workspace, buffers);
        }

        FillLives(values, count, workspace, buffers);
    }

    /// <summary>The details of the first row's legs with the damage of strikes.</summary>
    public static LegDetail[] WithStrikes(LegDetail[] details, Workspace workspace)
    {
        double[][] strikes = Workspace.Columns(details.Length, 1);
        double[] rest = new double[1];
        workspace.Modes!.Kernel.Evaluate(workspace.Damage, 1, strikes, rest, rest, rest);
        return [.. details.Select((d, leg) => strikes[leg][0] == 0 ? d : d with
        {
            DamagePerKm = d.DamagePerKm + strikes[leg][0] / workspace.Damage.Legs[leg].Share[0],
            DamagePerKmOfUse = d.DamagePerKmOfUse + strikes[leg][0],
        })];
    }

    private void Fill(double[][] values, DamageColumns columns, int age, int count, double[][] damageByLeg, double[] damage, ModeBuffers buffers)
    {
        if (modes.Switches.Any)
        {
            buffers.Kernel.Evaluate(
                columns, count, damageByLeg, damage, buffers.Rates.Of(FailureMode.Yield)[age], buffers.Rates.Of(FailureMode.Bearing)[age]);
        }

        damageRatio.Apply(values, count, damageByLeg, damage);
        damage.AsSpan(0, count).CopyTo(buffers.Rates.Of(FailureMode.Fatigue)[age]);
    }

    // Damage by leg becomes its mean over the required distance: trapezoids between the ages up to it.
    private void AddToMean(int k, int count, Workspace workspace, ModeBuffers buffers)
    {
        double required = scenario.RequiredKm;
        double Width(int i) => Math.Min(agesKm[i], required) - Math.Min(agesKm[i - 1], required);
        double weight = 0.5 * (Width(k) + (k + 1 < agesKm.Length ? Width(k + 1) : 0)) / required;
        double ofFirst = 0.5 * Width(1) / required;
        for (int leg = 0; leg < workspace.DamageByLeg.Length; leg++)
        {
            double[] mean = workspace.DamageByLeg[leg];
            double[] ofAge = buffers.DamageByLeg[leg];
            for (int row = 0; row < count; row++)
                mean[row] = (k == 1 ? ofFirst * mean[row] : mean[row]) + (weight > 0 ? weight * ofAge[row] : 0);
        }
    }

    private void FillLives(double[][] values, int count, Workspace workspace, ModeBuffers buffers)
    {
        double[][] damage = buffers.Rates.Of(FailureMode.Fatigue);
        for (int row = 0; row < count; row++)
        {
            if (modes.Ages)
                workspace.DamagePerKm[row] = AgedRates.Cumulated(damage, agesKm, row, scenario.RequiredKm) / scenario.RequiredKm;
            workspace.LifeKm[row] = AgedRates.Inverse(damage, agesKm, row, workspace.Scale[row]);
            buffers.First[row] = FailureMode.Fatigue;
            if (modes.Switches.Yield)
                Shorten(FailureMode.Yield, row, LifeModel.At(yieldScatter, values, row), workspace, buffers);
            if (modes.Switches.Bearing)
                Shorten(FailureMode.Bearing, row, LifeModel.At(bearingScatter, values, row), workspace, buffers);
        }
    }

    private void Shorten(FailureMode mode, int row, double scatter, Workspace workspace, ModeBuffers buffers)
    {
        double km = AgedRates.Inverse(buffers.Rates.Of(mode), agesKm, row, scatter);
        if (km < workspace.LifeKm[row])
        {
            workspace.LifeKm[row] = km;
            buffers.First[row] = mode;
        }
    }
}
