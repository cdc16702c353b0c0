using System.Collections.Immutable;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>
/// What evidence is weighed on: coordinates with a known prior, a likelihood, and what is to be told of each sample. The
/// coordinates are independent: standard normals, states with probabilities, and uniforms that no likelihood depends on.
/// </summary>
internal abstract class EvidenceModel
{
    /// <summary>The names of the standard normal coordinates; their random streams go by them.</summary>
    public abstract ImmutableArray<string> Normals { get; }

    /// <summary>The discrete coordinates: a name and the probability of each state.</summary>
    public virtual ImmutableArray<(string Name, ImmutableArray<double> Probabilities)> States => [];

    /// <summary>The names of uniforms that the likelihood does not depend on.</summary>
    public virtual ImmutableArray<string> Uniforms => [];

    /// <summary>The things to be told of: for each the number of its states, or 0 where it is continuous.</summary>
    public abstract ImmutableArray<int> Items { get; }

    /// <summary>The number of named events; few, for all their combinations are counted.</summary>
    public virtual int Events => 0;

    /// <summary>The event without which each twin is; empty where there is none.</summary>
    public virtual ImmutableArray<int> TwinEvents => [];

    /// <summary>The number of modes of failure that are told of; 0 where none are.</summary>
    public virtual int Modes => 0;

    /// <summary>One thread's buffers for blocks of up to <paramref name="capacity"/> rows.</summary>
    public abstract EvidenceWorker CreateWorker(int capacity);
}

/// <summary>One thread's part of an <see cref="EvidenceModel"/>.</summary>
internal abstract class EvidenceWorker(EvidenceModel model, int capacity)
{
    /// <summary>By item and row: the normal score of a continuous item (its prior is standard normal), the index of a state.</summary>
    public double[][] Items { get; } = Studies.Workspace.Columns(model.Items.Length, capacity);

    /// <summary>By row: which events hold, one bit each.</summary>
    public int[] Pattern { get; } = new int[capacity];

    /// <summary>By mode and row: how likely it is that the mode has failed, given the row and the evidence.</summary>
    public double[][] Modes { get; } = Studies.Workspace.Columns(model.Modes, capacity);

    /// <summary>By twin and row, filled by <see cref="EvaluateTwins"/>: 1 where the twin passes the distance asked of, else 0.</summary>
    public double[][] TwinPasses { get; } = Studies.Workspace.Columns(model.TwinEvents.Length, capacity);

    /// <summary>By twin and row: 1 where the twin too has failed by the distance at which the axle had, else 0.</summary>
    public double[][] TwinFails { get; } = Studies.Workspace.Columns(model.TwinEvents.Length, capacity);

    /// <summary>
    /// Evaluates the twins of the rows last evaluated: the same vehicles with what is left to chance as the evidence leaves it, and
    /// one thing otherwise.
    /// </summary>
    public virtual void EvaluateTwins(SamplePoints points, int count)
    {
    }

    /// <summary>
    /// Computes ln likelihood (up to a constant common to all samples), items and patterns of the first <paramref name="count"/>
    /// rows.
    /// </summary>
    public abstract void Evaluate(SamplePoints points, int count, Span<double> logLikelihood);
}

/// <summary>A block of samples by coordinate and row.</summary>
internal sealed class SamplePoints(EvidenceModel model, int capacity)
{
    /// <summary>The standard normal coordinates.</summary>
    public double[][] Normals { get; } = Studies.Workspace.Columns(model.Normals.Length, capacity);

    /// <summary>The indices of the states.</summary>
    public double[][] States { get; } = Studies.Workspace.Columns(model.States.Length, capacity);

    /// <summary>The uniforms, in (0, 1).</summary>
    public double[][] Uniforms { get; } = Studies.Workspace.Columns(model.Uniforms.Length, capacity);
}
