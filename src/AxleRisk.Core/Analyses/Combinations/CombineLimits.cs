namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>What a combination needs to be looked at and listed.</summary>
public sealed record CombineLimits
{
    /// <summary>The most ranges or states a combination has, 1 to 4.</summary>
    public int MostMembers { get; init; } = 4;

    /// <summary>The fewest sampled rows inside a combination.</summary>
    public int LeastRows { get; init; } = 100;

    /// <summary>
    /// The fewest failures behind its probability, as effective number: (sum of weights)^2 / sum of squared weights (Kish 1965).
    /// </summary>
    public double LeastEffectiveFailures { get; init; } = 20;

    /// <summary>The least share of all failures that a combination covers.</summary>
    public double LeastCoverage { get; init; } = 0.01;

    /// <summary>The chance that anything at all is claimed where nothing is to be found.</summary>
    public double ErrorRate { get; init; } = 0.01;

    /// <summary>The most combinations listed.</summary>
    public int Listed { get; init; } = 10;

    /// <summary>The most factors whose pairs are studied.</summary>
    public int StrongestFactors { get; init; } = 8;
}
