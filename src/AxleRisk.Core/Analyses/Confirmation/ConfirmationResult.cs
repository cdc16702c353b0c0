using System.Collections.Immutable;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Confirmation;

/// <summary>The spectral model against simulation in time, at the base case and at sampled points.</summary>
public sealed record ConfirmationResult
{
    /// <summary>The question.</summary>
    public required ConfirmationQuestion Question { get; init; }

    /// <summary>The base case, then the sampled points.</summary>
    public required ImmutableArray<ConfirmedPoint> Points { get; init; }

    /// <summary>What the simulation adds to the linear ride, one after the other; empty for the linear ride alone.</summary>
    public required ImmutableArray<RideStepKind> Steps { get; init; }

    /// <summary>Median of the damage ratio over the points: the geometric mean.</summary>
    public required double RatioMedian { get; init; }

    /// <summary>Its coefficient of variation between points, the error of simulation included.</summary>
    public required double RatioCov { get; init; }

    /// <summary>The damage ratio of each leg of use that was driven.</summary>
    public required ImmutableArray<LegRatio> Legs { get; init; }

    /// <summary>Independent records of each leg.</summary>
    public required int Records { get; init; }

    /// <summary>Simulated time of all records, rides and legs of the points together, s.</summary>
    public required double SimulatedSeconds { get; init; }

    /// <summary>Evaluations of the spectral model spent on choosing the points.</summary>
    public required int Evaluations { get; init; }

    /// <summary>Whether the run was ended early: the points are those done.</summary>
    public required bool IsPartial { get; init; }
}

/// <summary>True over computed damage of a leg, over the points.</summary>
/// <param name="Leg">The leg.</param>
/// <param name="Median">The median: the geometric mean.</param>
/// <param name="Cov">The coefficient of variation between points, the error of simulation included.</param>
public sealed record LegRatio(string Leg, double Median, double Cov);

/// <summary>What a simulated ride has that the linear one has not.</summary>
public enum RideStepKind
{
    /// <summary>A damper of other rates in compression and extension than the stated one.</summary>
    TwoRateDamper,

    /// <summary>A bump stop.</summary>
    BumpStop,

    /// <summary>Wheels that leave the ground.</summary>
    LiftOff,
}

/// <summary>One point.</summary>
/// <param name="Name">What it is: the base case, a point near failure, or a place in the order of lives.</param>
/// <param name="LifeKm">Life by the spectral model, km.</param>
/// <param name="Fast">Damage of the use by the spectral model of the linear ride over that of its simulation: the error of the
/// counting formula alone.</param>
/// <param name="FastStrikes">Damage of the use by the spectral model over that of the linear ride alone: above 1 where it reckons
/// with a bump stop.</param>
/// <param name="Steps">Damage of the use after each step over that before it, on the same roads.</param>
/// <param name="Limits">Damage of the use, simulation with lift-off and stops over the linear one, on the same roads.</param>
/// <param name="Ratio">True over computed damage: the simulation with its limits over the spectral model.</param>
/// <param name="Legs">By leg.</param>
public sealed record ConfirmedPoint(
    string Name, double LifeKm, Interval Fast, double FastStrikes, ImmutableArray<Interval> Steps, Interval Limits, Interval Ratio,
    ImmutableArray<ConfirmedLeg> Legs)
{
    /// <summary>The same for the legs of the scenario's trip, each over its distance; null where there is no trip.</summary>
    public ConfirmedPoint? Trip { get; init; }
}

/// <summary>One leg at a point; all intervals are of 95 %, from the records.</summary>
/// <param name="Name">The leg.</param>
/// <param name="DamageShare">Its share of the damage by the spectral model.</param>
/// <param name="FastOverLinear">Spectral damage of the linear ride over that of its simulation.</param>
/// <param name="Steps">Damage after each step over that before it.</param>
/// <param name="LimitsOverLinear">Damage with lift-off and stops over that of the linear simulation.</param>
/// <param name="FastOverReference">Spectral damage over that with lift-off and stops.</param>
/// <param name="OffGroundShare">Share of the time in which the wheel is off the ground.</param>
/// <param name="StrikesPerKm">Strikes of the bump stop a km.</param>
/// <param name="TyreForceRatio">RMS of the tyre force about its static value over that, in the linear simulation.</param>
public sealed record ConfirmedLeg(
    string Name, double DamageShare, Interval FastOverLinear, ImmutableArray<Interval> Steps, Interval LimitsOverLinear,
    Interval FastOverReference,
    double OffGroundShare, double StrikesPerKm, double TyreForceRatio);
