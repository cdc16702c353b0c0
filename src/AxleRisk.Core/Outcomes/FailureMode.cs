namespace AxleRisk.Core.Outcomes;

/// <summary>How the axle can fail. The life is the earliest of the modes that are on.</summary>
public enum FailureMode
{
    /// <summary>Fatigue of the housing, strikes on the bump stop included.</summary>
    Fatigue,

    /// <summary>First yield of the housing under the largest load.</summary>
    Yield,

    /// <summary>Fatigue of the wheel bearing.</summary>
    Bearing,
}
