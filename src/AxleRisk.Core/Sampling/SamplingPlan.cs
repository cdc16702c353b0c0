using AxleRisk.Core.Randomness;

namespace AxleRisk.Core.Sampling;

/// <summary>
/// How the unit cube is filled. A value depends on the stream's key, the dimension and the sample number alone, so any
/// part of a column can be computed anywhere, in any order.
/// </summary>
public abstract class SamplingPlan
{
    private protected SamplingPlan()
    {
    }

    /// <summary>The names <see cref="FromName"/> knows.</summary>
    public static IReadOnlyList<string> Names { get; } = [PlainMonteCarlo.PlanName, LatinHypercube.PlanName, ScrambledSobol.PlanName];

    /// <summary>The plan's name.</summary>
    public abstract string Name { get; }

    /// <summary>The number of dimensions the plan has; a dimension is below it.</summary>
    public virtual int Dimensions => int.MaxValue;

    /// <summary>The number of samples the plan has; a sample number is below it.</summary>
    public virtual long Samples => long.MaxValue;

    /// <summary>The plan of a name.</summary>
    /// <param name="name">One of <see cref="Names"/>.</param>
    /// <param name="count">The number of samples of the study, at least 1; only the Latin hypercube depends on it.</param>
    /// <exception cref="ArgumentException">The name is unknown.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The count is below 1.</exception>
    public static SamplingPlan FromName(string name, long count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        return name switch
        {
            PlainMonteCarlo.PlanName => new PlainMonteCarlo(),
            LatinHypercube.PlanName => new LatinHypercube(count),
            ScrambledSobol.PlanName => new ScrambledSobol(),
            _ => throw new ArgumentException($"unknown sampling plan '{name}'; known are {string.Join(", ", Names)}", nameof(name)),
        };
    }

    /// <summary>Fills a column with the values, in (0, 1), of consecutive samples.</summary>
    /// <param name="key">The stream: seed and the factor's name.</param>
    /// <param name="dimension">The factor's place among the factors, from 0.</param>
    /// <param name="first">The number of the first sample, from 0.</param>
    /// <param name="unit">The column's part to fill.</param>
    /// <exception cref="ArgumentOutOfRangeException">The dimension or a sample number is outside the plan.</exception>
    internal void Fill(StreamKey key, int dimension, long first, Span<double> unit)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(dimension);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(dimension, Dimensions);
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(first, Samples - unit.Length);
        FillColumn(new RandomStream(key), dimension, first, unit);
    }

    private protected abstract void FillColumn(RandomStream stream, int dimension, long first, Span<double> unit);
}
