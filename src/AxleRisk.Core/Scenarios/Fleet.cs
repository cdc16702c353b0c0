using System.Collections.Immutable;

namespace AxleRisk.Core.Scenarios;

/// <summary>The vehicles of one model that are sold under one warranty, and what is asked of them.</summary>
public sealed record Fleet
{
    /// <summary>The most vehicles a fleet may have: counts stay exact, and the binomial tails keep their digits.</summary>
    public const long MostVehicles = 10_000_000;

    /// <summary>The longest warranty, and the longest time of sale, in months: fifty years.</summary>
    public const int MostMonths = 600;

    /// <summary>The number of vehicles, at least 1.</summary>
    public required long Vehicles { get; init; }

    /// <summary>What one vehicle drives in a year, km, above 0; where it is uncertain it differs between owners.</summary>
    public required Value KmPerYear { get; init; }

    /// <summary>The warranty's age limit in whole months from the sale of the vehicle.</summary>
    public required int WarrantyMonths { get; init; }

    /// <summary>The warranty's distance limit, km, above 0; whichever limit is reached first ends the warranty.</summary>
    public required double WarrantyKm { get; init; }

    /// <summary>The share of the fleet that is sold in each month from the first sale on; sums to 1.</summary>
    public required ImmutableArray<double> SaleShares { get; init; }

    /// <summary>
    /// What one claim costs, in the user's own unit; where it is uncertain it differs between claims. Null where it is not
    /// stated.
    /// </summary>
    public Value? CostPerClaim { get; init; }

    /// <summary>The share of vehicles that may make a claim, above 0 and below 1; null where it is not stated.</summary>
    public double? TargetClaimRate { get; init; }

    /// <summary>The life that is to be met; null where it is not stated.</summary>
    public LifeTarget? TargetLife { get; init; }

    /// <summary>The distance of the target life, km, if one is stated.</summary>
    public ImmutableArray<double> TargetKm => TargetLife is { } target ? [target.Km] : [];
}

/// <summary>A B life that is to be met: B10 of 200,000 km is the share 0.1 by 200,000 km.</summary>
/// <param name="Fraction">The share that may have failed, above 0 and below 1.</param>
/// <param name="Km">The distance by which it may, km, above 0.</param>
public sealed record LifeTarget(double Fraction, double Km);
