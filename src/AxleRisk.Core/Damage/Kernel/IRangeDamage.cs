using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>The damage of one cycle on an S-N curve, several rows at a time: <see cref="Fatigue.MinerSum.OfRange"/> of lanes.</summary>
internal interface IRangeDamage
{
    /// <summary>The damage of a cycle over that of one at the curve's reference.</summary>
    /// <param name="range">The range over the reference.</param>
    /// <param name="cutOff">The cut-off over the reference.</param>
    T OfRange<T>(T range, T cutOff)
        where T : struct, IFloatLanes<T>;
}
