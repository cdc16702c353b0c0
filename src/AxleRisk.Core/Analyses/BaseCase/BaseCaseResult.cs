using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.BaseCase;

/// <summary>The base case and each factor's pull on it.</summary>
public sealed record BaseCaseResult
{
    /// <summary>
    /// Life with every input at its nominal value, km: on the mean S-N curve unless the scenario's scatter says otherwise.
    /// </summary>
    public required double LifeKm { get; init; }

    /// <summary>Life with every factor at its median, km.</summary>
    public required double MedianFactorsLifeKm { get; init; }

    /// <summary>Damage per km of use.</summary>
    public required double DamagePerKm { get; init; }

    /// <summary>Each leg's share of the damage, in the scenario's order.</summary>
    public required ImmutableArray<double> DamageShares { get; init; }

    /// <summary>What the axle's own damage model says of ride and stress; null where the scenario brings another model.</summary>
    public required BaseAxle? Axle { get; init; }

    /// <summary>The depth of the crack by distance, with every input at its nominal value: km and mm; empty where the scenario states
    /// none.</summary>
    public ImmutableArray<(double Km, double Mm)> Depths { get; init; } = [];

    /// <summary>One factor at a time, the strongest pull first.</summary>
    public required ImmutableArray<OneAtATime> Factors { get; init; }

    /// <summary>Evaluations of the damage model spent.</summary>
    public required int Evaluations { get; init; }
}

/// <summary>The base case as the axle's own damage model sees it.</summary>
public sealed record BaseAxle
{
    /// <summary>The section modulus in effect through the stress per force, MPa per kN of wheel force.</summary>
    public required double StressPerKnMPa { get; init; }

    /// <summary>Undamped natural frequency of the body on its springs, Hz.</summary>
    public required double BodyBounceHz { get; init; }

    /// <summary>Undamped natural frequency of the axle between spring and tyre, Hz.</summary>
    public required double WheelHopHz { get; init; }

    /// <summary>The S-N curve as published (the design curve).</summary>
    public required SnCurve Curve { get; init; }

    /// <summary>Every checked section, the first before the others; empty where there is one alone.</summary>
    public ImmutableArray<BaseSection> Sections { get; init; } = [];

    /// <summary>The place of the stretch of the history that the section, the frequencies and the legs are told of; null without a
    /// history.</summary>
    public int? Stretch { get; init; }

    /// <summary>Each leg's part.</summary>
    public required ImmutableArray<BaseLeg> Legs { get; init; }

    /// <summary>Each event's part, in the order of the legs.</summary>
    public required ImmutableArray<BaseEvent> Events { get; init; }
}

/// <summary>One leg in the base case.</summary>
/// <param name="Name">The leg's name.</param>
/// <param name="Share">Its share of the distance.</param>
/// <param name="SpeedKmPerH">Its speed.</param>
/// <param name="StressRmsMPa">RMS of the stress about its mean.</param>
/// <param name="UpcrossingsPerSecond">Up-crossings of the mean a second.</param>
/// <param name="DamageShare">Its share of the damage.</param>
public sealed record BaseLeg(
    string Name, double Share, double SpeedKmPerH, double StressRmsMPa, double UpcrossingsPerSecond, double DamageShare);

/// <summary>One checked section in the base case.</summary>
/// <param name="Name">Its name; <see cref="CheckedSection.First"/> for the first.</param>
/// <param name="StressPerKnMPa">Stress for one kN of wheel force, MPa.</param>
/// <param name="Curve">The S-N curve as published (the design curve).</param>
/// <param name="DamagePerKm">Damage per km of use, when new.</param>
public sealed record BaseSection(string Name, double StressPerKnMPa, SnCurve Curve, double DamagePerKm);

/// <summary>One event in the base case.</summary>
/// <param name="Leg">Its leg.</param>
/// <param name="Name">Its name.</param>
/// <param name="PerKm">How often it comes in a km of the leg.</param>
/// <param name="ShareOfLeg">Its share of the damage of its leg.</param>
/// <param name="Share">Its share of all damage.</param>
public sealed record BaseEvent(string Leg, string Name, double PerKm, double ShareOfLeg, double Share);

/// <summary>What one factor alone does to life, all others at their nominal.</summary>
/// <param name="Factor">The factor.</param>
/// <param name="Low">Its 5 % point, in its unit; NaN for the road mix.</param>
/// <param name="High">Its 95 % point.</param>
/// <param name="LifeAtLow">Life at the 5 % point over the life of the base case.</param>
/// <param name="LifeAtHigh">Life at the 95 % point over the life of the base case.</param>
/// <param name="LifeAtPlusTenPercent">Life with the nominal raised by 10 % over the life of the base case; NaN where that has no
/// meaning (a category, a nominal of 0).</param>
public sealed record OneAtATime(
    Factor Factor, double Low, double High, double LifeAtLow, double LifeAtHigh, double LifeAtPlusTenPercent)
{
    /// <summary>How far the factor pulls: the larger of the two lives over the smaller, 1 for no effect.</summary>
    public double Pull => Math.Exp(Math.Abs(Math.Log(LifeAtHigh / LifeAtLow)));
}
