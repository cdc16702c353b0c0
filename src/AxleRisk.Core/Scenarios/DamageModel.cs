using System.Collections.Immutable;

namespace AxleRisk.Core.Scenarios;

/// <summary>
/// A damage model that a scenario made in code brings in place of the axle's own (<see cref="Scenario.Model"/>): what it reads are the
/// scenario's inputs, by <see cref="Quantity"/>; what it gives is damage per km. Factors, Miner sum and scatter of life, sampling and every
/// analysis are the same as with the axle's. It may be asked from any thread; each thread brings a worker.
/// </summary>
public abstract class DamageModel
{
    /// <summary>
    /// About how long one evaluation takes, in microseconds of one core; the axle's takes less than one. Methods and budgets are chosen by
    /// it, and results may depend on it, so that it is stated and not measured.
    /// </summary>
    public virtual double MicrosecondsPerEvaluation => 1;

    /// <summary>Modes of failure beside fatigue, in the order of their rates.</summary>
    public virtual ImmutableArray<ModelMode> FurtherModes => [];

    /// <summary>Whether rates change with the distance driven.</summary>
    public virtual bool Ages => false;

    /// <summary>A worker for one thread and blocks of up to <paramref name="capacity"/> rows.</summary>
    public abstract DamageWorker CreateWorker(int capacity);
}

/// <summary>One thread's worker of a <see cref="DamageModel"/>: turns columns of inputs into damage.</summary>
public abstract class DamageWorker
{
    /// <summary>Evaluates a block of vehicles.</summary>
    /// <param name="inputs">The inputs of the scenario, by quantity and row.</param>
    /// <param name="damagePerKm">
    /// Takes the fatigue damage of one km driven on each leg, by leg and row; the legs' shares of the use are not its business.
    /// </param>
    /// <param name="ratesPerKm">
    /// Takes what each of <see cref="DamageModel.FurtherModes"/> uses up in a km of the use, by mode and row; the shares of the legs, where
    /// they matter, are <see cref="InputColumns.ShareOf"/>.
    /// </param>
    /// <remarks>Values depend on the row's inputs alone, so that any block and any thread gives the same digits.</remarks>
    public abstract void Evaluate(InputColumns inputs, double[][] damagePerKm, double[][] ratesPerKm);
}

/// <summary>A mode of failure beside fatigue of a <see cref="DamageModel"/>: it fails once it has used up its scatter.</summary>
/// <param name="Key">Its name in files.</param>
/// <param name="Words">Its name in sentences.</param>
/// <param name="Scatter">How much it can use up, in the unit of its rate times km; an input of the scenario.</param>
public sealed record ModelMode(string Key, string Words, Quantity Scatter);
