using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Shares;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;

namespace AxleRisk.Core.Tests.Analyses.Shares;

/// <summary>A function of standard normal inputs, independent or correlated, one column a player; uniform inputs are Phi of them.</summary>
internal sealed class NormalProblem(
    int players, Func<ReadOnlySpan<double>, double> function, JointMoment moment, double[,]? correlations = null, int scalePlayers = 0,
    ulong seed = 1) : ShareProblem
{
    private readonly double[,]? cholesky = correlations is null ? null
        : MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseOfArray(correlations).Cholesky().Factor.ToArray();

    public override ImmutableArray<ImmutableArray<int>> Columns { get; } = [.. Enumerable.Range(0, players)
        .Select(p => ImmutableArray.Create(p))];

    public override int ColumnCount => players;

    public override ScoreDependence? Dependence { get; } =
        correlations is null ? null : new ScoreDependence([.. Enumerable.Range(0, players)], correlations);

    public override int ScalePlayers => scalePlayers;

    public override ImmutableArray<JointMoment> Moments => [moment];

    public override ShareSample CreateSample(int capacity) => new Sample(players, function, cholesky, seed);

    private sealed class Sample(int players, Func<ReadOnlySpan<double>, double> function, double[,]? cholesky, ulong seed) : ShareSample
    {
        public override void Draw(int replicate, bool second, long first, double[][] values, double[][] scores)
        {
            for (int p = 0; p < players; p++)
            {
                new RandomStream(new StreamKey(seed, $"x{p}/{second}/{replicate}")).FillUnit(first, values[p]);
                StandardNormal.Quantiles(values[p], values[p]);
            }

            for (int p = players - 1; cholesky is not null && p >= 0; p--)
            {
                for (int row = 0; row < values[p].Length; row++)
                {
                    double score = 0;
                    for (int j = 0; j <= p; j++)
                    {
                        score += cholesky[p, j] * values[j][row];
                    }

                    values[p][row] = scores[p][row] = score;
                }
            }
        }

        public override void FromScores(int member, double[] scores, int count, double[][] values) =>
            scores.AsSpan(0, count).CopyTo(values[member]);

        public override void Evaluate(double[][] values, int count, double[][] outputs, int at)
        {
            Span<double> x = stackalloc double[players];
            for (int row = 0; row < count; row++)
            {
                for (int p = 0; p < players; p++)
                {
                    x[p] = values[p][row];
                }

                outputs[0][at + row] = function(x);
            }
        }
    }
}
