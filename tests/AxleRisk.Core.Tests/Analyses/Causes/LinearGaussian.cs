using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Causes;

namespace AxleRisk.Core.Tests.Analyses.Causes;

/// <summary>
/// y = b.x + e with x standard normal and e of standard deviation s: given y the x are normal with mean b y / (|b|^2 + s^2)
/// and covariance I - b b' / (|b|^2 + s^2). Event i: x_i above a threshold.
/// </summary>
internal sealed class LinearGaussian(double[] b, double s, double y, double threshold = 1) : EvidenceModel
{
    public override ImmutableArray<string> Normals { get; } = [.. b.Select((_, i) => $"x{i}")];

    public override ImmutableArray<int> Items { get; } = [.. b.Select(_ => 0)];

    public override int Events => b.Length;

    private double Total => b.Sum(x => x * x) + (s * s);

    public double MeanOf(int i) => b[i] * y / Total;

    public double DeviationOf(int i) => Math.Sqrt(1 - (b[i] * b[i] / Total));

    public override EvidenceWorker CreateWorker(int capacity) => new Worker(this, capacity);

    private sealed class Worker(LinearGaussian parent, int capacity) : EvidenceWorker(parent, capacity)
    {
        private readonly LinearGaussian parent = parent;

        public override void Evaluate(SamplePoints points, int count, Span<double> logLikelihood)
        {
            for (int row = 0; row < count; row++)
            {
                double rest = parent.Residual(points, row);
                logLikelihood[row] = -0.5 * rest * rest;
                Pattern[row] = parent.PatternOf(points, row);
                for (int i = 0; i < Items.Length; i++)
                {
                    Items[i][row] = points.Normals[i][row];
                }
            }
        }
    }

    private double Residual(SamplePoints points, int row) => (y - b.Select((x, i) => x * points.Normals[i][row]).Sum()) / s;

    private int PatternOf(SamplePoints points, int row) => b.Select((_, i) => points.Normals[i][row] > threshold ? 1 << i : 0).Sum();
}
