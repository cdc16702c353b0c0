using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// Where damage comes from: turns factor values into damage by leg and rates of further modes. Holds no state that changes; what it needs
/// for each thread stands in the <see cref="Workspace"/>.
/// </summary>
internal abstract class DamageSource
{
    /// <summary>Where the values of the scenario's inputs come from.</summary>
    public abstract ColumnSteps Inputs { get; }

    /// <summary>The source of a scenario: its own model, or the axle's.</summary>
    public static DamageSource Of(Scenario scenario, FactorSet factors, ModeSet modes) =>
        scenario.Model is { } model ? new ModelDamage(scenario, factors, model) : new AxleDamage(scenario, factors, modes);

    /// <summary>What one thread needs for blocks of up to <paramref name="capacity"/> rows.</summary>
    public abstract DamageState CreateState(int capacity);

    /// <summary>Begins a block of factor values.</summary>
    public abstract void Begin(double[][] values, int count, DamageState state);

    /// <summary>Damage per km of the use and rates of the block begun, of new vehicles or of those of an age each.</summary>
    /// <param name="values">The factor values, by column and row.</param>
    /// <param name="count">Rows.</param>
    /// <param name="state">The thread's.</param>
    /// <param name="ageKm">The distances driven, km, by row; empty where nothing ages.</param>
    /// <param name="sameRide">Whether only what does not touch the ride has changed since the last call for this block.</param>
    /// <param name="to">Takes damage by leg, damage and the rates of the further modes.</param>
    public abstract void Evaluate(double[][] values, int count, DamageState state, double[] ageKm, bool sameRide, DamageRates to);
}

/// <summary>What a <see cref="DamageSource"/> fills, by row: per km of the use.</summary>
/// <param name="ByLeg">Damage by leg.</param>
/// <param name="Total">Damage.</param>
/// <param name="Further">The rate of each mode beside fatigue.</param>
internal readonly record struct DamageRates(double[][] ByLeg, double[] Total, double[][] Further);

/// <summary>What a <see cref="DamageSource"/> keeps for one thread.</summary>
internal abstract class DamageState
{
    /// <summary>What is said where a study needs the axle's own model.</summary>
    public const string AnotherModel = "this study looks into the axle's own damage model, and the scenario brings another";

    /// <summary>The columns of the axle's model.</summary>
    /// <exception cref="StudyException">The scenario brings a damage model of its own.</exception>
    public virtual DamageColumns Columns => throw new StudyException(AnotherModel);
}
