namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>Which probability must meet a target, where the fleet's own probability is not known.</summary>
public enum TargetBasis
{
    /// <summary>The average over what is not known: the expected share of the fleet.</summary>
    Average,

    /// <summary>The value that is not exceeded with a probability of 90 % over what is not known.</summary>
    NinetyPercent,
}
