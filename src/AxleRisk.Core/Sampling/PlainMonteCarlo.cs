using AxleRisk.Core.Randomness;

namespace AxleRisk.Core.Sampling;

/// <summary>Independent samples.</summary>
internal sealed class PlainMonteCarlo : SamplingPlan
{
    public const string PlanName = "plain";

    public override string Name => PlanName;

    private protected override void FillColumn(RandomStream stream, int dimension, long first, Span<double> unit) =>
        stream.FillUnit(first, unit);
}
