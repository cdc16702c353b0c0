namespace AxleRisk.Core.Numerics;

/// <summary>Checks of a confidence level.</summary>
internal static class Confidence
{
    /// <summary>The probability left to each side of a two-sided interval.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public static double Tail(double confidence) => confidence is > 0 and < 1
        ? (1 - confidence) / 2
        : throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "a confidence level lies between 0 and 1");
}
