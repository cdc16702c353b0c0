namespace AxleRisk.Core.Numerics;

/// <summary>Two ranks, from 1, and the probability that their order statistics enclose a quantile.</summary>
/// <param name="Lower">The lower rank; 0 if there is no lower limit.</param>
/// <param name="Upper">The upper rank; one more than the sample's size if there is no upper limit.</param>
/// <param name="Coverage">The exact coverage.</param>
internal readonly record struct RankInterval(long Lower, long Upper, double Coverage);
