using AxleRisk.Core.Damage.Fatigue;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// The whole slopes of an S-N curve on either side of its knee.
/// </summary>
/// <param name="Above">Slope above the knee.</param>
/// <param name="Below">Slope below the knee, not smaller.</param>
internal readonly record struct SlopePair(int Above, int Below)
{
    private const int Steepest = 20;

    /// <summary>The slopes of a curve that <see cref="Serves"/>.</summary>
    public SlopePair(SnCurve curve)
        : this((int)curve.SlopeAboveKnee, (int)curve.SlopeBelowKnee)
    {
    }

    /// <summary>Whether the batch serves a curve: two different whole slopes, the steeper one below the knee.</summary>
    public static bool Serves(SnCurve curve) =>
        IsWhole(curve.SlopeAboveKnee) && IsWhole(curve.SlopeBelowKnee) && curve.SlopeBelowKnee > curve.SlopeAboveKnee
        && curve.KneeMPa > 0 && double.IsFinite(curve.KneeMPa);

    private static bool IsWhole(double slope) => slope >= 1 && slope <= Steepest && slope == Math.Floor(slope);
}
