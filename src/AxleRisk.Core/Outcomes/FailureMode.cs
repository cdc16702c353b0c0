namespace AxleRisk.Core.Outcomes;

/// <summary>A way in which the axle can fail. The life is the earliest of those that are on.</summary>
/// <param name="Key">Its name in files.</param>
/// <param name="Words">Its name in sentences.</param>
public sealed record FailureMode(string Key, string Words)
{
    /// <summary>Fatigue of the housing, strikes on the bump stop included; always on, and first of every list.</summary>
    public static FailureMode Fatigue { get; } = new("fatigue", "fatigue");
}
