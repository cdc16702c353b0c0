using AxleRisk.Core.Randomness;

namespace AxleRisk.Core.Sampling;

/// <summary>
/// Latin hypercube sampling (McKay, Beckman, Conover 1979): of N samples exactly one falls in each of the N equal strata
/// of every dimension. Sample i is (pi(i) + u_i) / N with pi a keyed permutation, so it needs no table of N places.
/// </summary>
internal sealed class LatinHypercube : SamplingPlan
{
    public const string PlanName = "latin-hypercube";

    private readonly long count;

    /// <summary>A plan of exactly <paramref name="count"/> samples, at least 1; a part of them is not stratified.</summary>
    public LatinHypercube(long count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        this.count = count;
    }

    public override string Name => PlanName;

    public override long Samples => count;

    private protected override void FillColumn(RandomStream stream, int dimension, long first, Span<double> unit)
    {
        KeyedPermutation permutation = new(count, stream, Lanes.Permutation);
        stream.FillUnit(first, unit);
        for (int i = 0; i < unit.Length; i++)
        {
            // In the last stratum the sum may round up to N itself.
            unit[i] = Math.Min((permutation.Of(first + i) + unit[i]) / count, UnitInterval.Largest);
        }
    }
}
