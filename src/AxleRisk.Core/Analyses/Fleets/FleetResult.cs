using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>What a fleet's warranty will bring, and what would meet its targets.</summary>
public sealed record FleetResult
{
    /// <summary>
    /// The failure probability by the target life's distance as the risk study gives it; null without a target, or where the
    /// analysis stands by itself.
    /// </summary>
    public RiskHeadline? Headline { get; init; }

    /// <summary>The fleet.</summary>
    public required Fleet Fleet { get; init; }

    /// <summary>The currency of the costs; null where none is stated.</summary>
    public string? Currency { get; init; }

    /// <summary>The share of the fleet expected to make a claim, with its interval (error of sampling).</summary>
    public required Interval ClaimRate { get; init; }

    /// <summary>The number of claims: expected, and what the fleet will have with 95 % probability.</summary>
    public required Prediction Claims { get; init; }

    /// <summary>
    /// The share of the variance of the number of claims that comes of what the whole fleet shares and nobody knows; the rest is
    /// chance.
    /// </summary>
    public required double UnknownShare { get; init; }

    /// <summary>The share of the vehicles whose warranty ends by its distance, not by its age.</summary>
    public required double EndedByDistance { get; init; }

    /// <summary>The claims by month since the first sale, to the end of the last warranty.</summary>
    public required ImmutableArray<ClaimMonth> Months { get; init; }

    /// <summary>What the claims will cost; null where no cost is stated.</summary>
    public required CostPrediction? Cost { get; init; }

    /// <summary>What the target claim rate leaves; null where none is stated.</summary>
    public required WarrantyLimits? Warranty { get; init; }

    /// <summary>What meets the target life; null where none is stated, or where the run ended before.</summary>
    public required DesignLimits? Design { get; init; }

    /// <summary>How the sample was divided.</summary>
    public required FleetSampling Sampling { get; init; }

    /// <summary>The run behind it; its evaluations are those of all samples.</summary>
    public required RunRecord Run { get; init; }
}

/// <summary>A count of the fleet.</summary>
/// <param name="Expected">The expected number, with its 95 % interval (error of sampling).</param>
/// <param name="Low">The number is not below this with a probability of 97.5 %: what is unknown and chance, both.</param>
/// <param name="High">It is not above this with a probability of 97.5 %.</param>
public sealed record Prediction(Interval Expected, long Low, long High);

/// <summary>The claims of one month.</summary>
/// <param name="Month">The month, from 1 for that of the first sales.</param>
/// <param name="InMonth">The claims in it.</param>
/// <param name="SoFar">The claims to its end.</param>
public sealed record ClaimMonth(int Month, Prediction InMonth, Prediction SoFar);

/// <summary>The cost of all claims, in the user's own unit.</summary>
/// <param name="Expected">The expected cost, with its 95 % interval (error of sampling).</param>
/// <param name="Low">The lower end of the 95 % predictive interval.</param>
/// <param name="High">Its upper end.</param>
/// <param name="SimulatedFleets">Fleets simulated for the predictive interval; 0 where every claim costs the same.</param>
public sealed record CostPrediction(Interval Expected, double Low, double High, int SimulatedFleets);

/// <summary>What the target claim rate leaves.</summary>
/// <param name="Target">The target claim rate.</param>
/// <param name="Confidence">The probability, over what is not known, that the warranty as stated meets it.</param>
/// <param name="Limits">The longest warranties by basis; without anything unknown there is but the average.</param>
public sealed record WarrantyLimits(double Target, Interval Confidence, ImmutableArray<WarrantyLimit> Limits);

/// <summary>The longest warranties that meet the target.</summary>
/// <param name="Basis">Which claim rate meets it.</param>
/// <param name="Months">The age limit in months, with the distance limit as stated.</param>
/// <param name="Km">The distance limit in km, with the age limit as stated.</param>
public sealed record WarrantyLimit(TargetBasis Basis, SearchAnswer Months, SearchAnswer Km);

/// <summary>What meets the target life.</summary>
/// <param name="Target">The target.</param>
/// <param name="AsItIs">The failure probability by the target's distance now, average over what is not known.</param>
/// <param name="NominalWallMm">The nominal wall now; null where the section's modulus is given and the wall decides nothing.</param>
/// <param name="HasWallSpread">Whether the wall has a tolerance that could be changed.</param>
/// <param name="Categories">The categories of the catalogue, best first.</param>
/// <param name="Limits">The limiting designs by basis; without anything unknown there is but the average.</param>
public sealed record DesignLimits(
    LifeTarget Target, Interval AsItIs, double? NominalWallMm, bool HasWallSpread, ImmutableArray<string> Categories,
        ImmutableArray<DesignLimit> Limits);

/// <summary>The limiting designs, each with all else as stated.</summary>
/// <param name="Basis">Which failure probability meets the target.</param>
/// <param name="WallMm">The smallest nominal wall, mm, its spread as it is; null where the wall decides nothing.</param>
/// <param name="Tolerance">The loosest tolerance, as a multiple of the wall's spread about its nominal; null where there is none.</param>
/// <param name="Category">The worst category of the same catalogue; null where the S-N curve is the scenario's own.</param>
public sealed record DesignLimit(TargetBasis Basis, SearchAnswer? WallMm, SearchAnswer? Tolerance, CategoryAnswer? Category);

/// <summary>How the two-level sample was divided.</summary>
/// <param name="Replicates">Independent replicates.</param>
/// <param name="Outer">Outer draws of what the fleet shares, in all.</param>
/// <param name="Inner">Vehicles drawn for each of them.</param>
/// <param name="DesignOuter">Outer draws behind each design looked at; 0 where none was.</param>
/// <param name="DesignInner">Vehicles drawn for each of them.</param>
/// <param name="Designs">Designs looked at.</param>
/// <param name="Shared">The factors that the whole fleet shares.</param>
/// <param name="IsConditional">Whether what is left to chance in each mode of a vehicle is averaged exactly rather than drawn.</param>
/// <param name="Modes">The number of modes of failure that are on.</param>
/// <param name="InnerShare">How much of the variance between outer draws as drawn is only the error of their inner draws: it is
/// taken out.</param>
/// <param name="Residue">By what share the band of the claims may still be too wide or too narrow for it, 95 %.</param>
public sealed record FleetSampling(
    int Replicates, int Outer, int Inner, int DesignOuter, int DesignInner, int Designs,
    ImmutableArray<Factor> Shared, bool IsConditional, int Modes, double InnerShare, double Residue);
