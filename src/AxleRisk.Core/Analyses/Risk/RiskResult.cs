using System.Collections.Immutable;
using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>How the failure probability is estimated.</summary>
public enum RiskMethod
{
    /// <summary>Conditional where the scenario allows it, otherwise by counting.</summary>
    Auto,

    /// <summary>Failures are counted.</summary>
    Crude,

    /// <summary>The exact failure probability given the damage is averaged (conditional Monte Carlo).</summary>
    Conditional,

    /// <summary>Importance sampling about the design points, at every distance of the table.</summary>
    Importance,
}

/// <summary>The failure probability over distance and the lives.</summary>
public sealed record RiskResult
{
    /// <summary>The distance the axle must last, km.</summary>
    public required double RequiredKm { get; init; }

    /// <summary>The failure probability at the required distance.</summary>
    public required DistanceRisk AtRequired { get; init; }

    /// <summary>The failure probability over distance, rising.</summary>
    public required ImmutableArray<DistanceRisk> Distances { get; init; }

    /// <summary>What the sampled part tells of the distances of <see cref="RiskQuestion.PictureKm"/>, in their order.</summary>
    public ImmutableArray<DistanceRisk> Picture { get; init; } = [];

    /// <summary>The distances by which 1, 5, 10 and 50 % have failed.</summary>
    public required ImmutableArray<LifeQuantile> Lives { get; init; }

    /// <summary>Life with every factor at its median, km.</summary>
    public required double MedianFactorsLifeKm { get; init; }

    /// <summary>The mean share of the damage that each leg does, over all evaluations.</summary>
    public required ImmutableArray<LegDamage> Legs { get; init; }

    /// <summary>Each mode's part, in the order of the modes; empty where fatigue is the only one.</summary>
    public ImmutableArray<ModeRisk> Modes { get; init; } = [];

    /// <summary>The depth of the crack by distance; empty where the scenario states none, or the run is not whole.</summary>
    public ImmutableArray<DepthAtDistance> Depths { get; init; } = [];

    /// <summary>The method of the sampled part: crude or conditional.</summary>
    public required RiskMethod Method { get; init; }

    /// <summary>Why that method, in a sentence.</summary>
    public required string MethodReason { get; init; }

    /// <summary>The rare-event answers that stand in the table in place of sampled ones, rising in distance.</summary>
    public ImmutableArray<RareEventResult> RareEvents { get; init; } = [];

    /// <summary>The run behind the sampled part; each rare-event answer carries its own.</summary>
    public required RunRecord Run { get; init; }
}

/// <summary>The failure probability by one distance, with its 95 % interval.</summary>
/// <param name="DistanceKm">The distance.</param>
/// <param name="Probability">P(life &lt; distance); where it was not resolved, NaN with the bound as its upper end.</param>
/// <param name="Method">The method behind this probability.</param>
public sealed record DistanceRisk(double DistanceKm, Interval Probability, RiskMethod Method)
{
    /// <summary>Whether there is an estimate; otherwise it is NaN and the interval's upper end is all that is known.</summary>
    public bool IsResolved => !double.IsNaN(Probability.Estimate);

    /// <summary>The reliability index beta = -Phi^-1(P) with its interval.</summary>
    public Interval Beta => new(
        -StandardNormal.Quantile(Probability.Estimate), -StandardNormal.Quantile(Probability.High),
            -StandardNormal.Quantile(Probability.Low));
}

/// <summary>The distance by which a share of the vehicles has failed (B10 life: a tenth), with its 95 % interval.</summary>
/// <param name="Percent">The share, in percent.</param>
/// <param name="LifeKm">The distance; a bound is NaN where the run is too small to give it.</param>
public sealed record LifeQuantile(double Percent, Interval LifeKm);

/// <summary>One leg's part of the damage.</summary>
/// <param name="Name">The leg.</param>
/// <param name="Share">Its mean share of the damage, with the interval of the mean.</param>
public sealed record LegDamage(string Name, Interval Share);
