using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.TimeDomain;

/// <summary>What eight simulated records add up to, by record.</summary>
internal sealed class LaneTallies
{
    /// <summary>Sums of squares of the force through the section, N^2.</summary>
    public AlignedBuffer<double> ForceSquares { get; } = new(LaneFourier.Lanes);

    /// <summary>Sums of squares of the tyre force about its static value, N^2.</summary>
    public AlignedBuffer<double> TyreSquares { get; } = new(LaneFourier.Lanes);

    /// <summary>How often the bump stop was met.</summary>
    public AlignedBuffer<double> BumpStrikes { get; } = new(LaneFourier.Lanes);

    /// <summary>How often the rebound stop was met.</summary>
    public AlignedBuffer<double> ReboundStrikes { get; } = new(LaneFourier.Lanes);

    /// <summary>Samples at which the tyre force would be, or without lift-off is, below nothing.</summary>
    public AlignedBuffer<double> OffGround { get; } = new(LaneFourier.Lanes);

    /// <summary>Back to nothing.</summary>
    public void Clear()
    {
        foreach (AlignedBuffer<double> buffer in (AlignedBuffer<double>[])[ForceSquares, TyreSquares, BumpStrikes, ReboundStrikes,
            OffGround])
        {
            buffer.Span.Clear();
        }
    }
}
