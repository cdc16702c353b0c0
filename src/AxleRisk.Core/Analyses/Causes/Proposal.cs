using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>
/// What samples are drawn from: the prior, or a density moved toward the evidence. A moved one keeps a tenth of the prior
/// in it (a defensive mixture, Hesterberg 1995; Owen and Zhou 2000), so that no weight for moving exceeds ten a part.
/// </summary>
internal sealed class Proposal
{
    private const double PriorShare = 0.1;

    private readonly EvidenceModel model;
    private readonly double[] mean;
    private readonly double[][]? cholesky;
    private readonly double[][] states;
    private readonly double lnDeterminant;

    private Proposal(EvidenceModel model, double[] mean, double[][]? cholesky, double[][] states)
    {
        this.model = model;
        this.mean = mean;
        this.cholesky = cholesky;
        this.states = states;
        lnDeterminant = cholesky?.Sum(row => Math.Log(row[^1])) ?? 0;
    }

    /// <summary>Whether it is the prior, with all weights for moving 1.</summary>
    public bool IsPrior => cholesky is null;

    /// <summary>The prior.</summary>
    public static Proposal PriorOf(EvidenceModel model) => new(model, [], null, [.. model.States.Select(s => s.Probabilities.ToArray())]);

    /// <summary>A density moved to a mean, with a covariance by its Cholesky factor, and to probabilities of the states.</summary>
    public static Proposal Moved(EvidenceModel model, double[] mean, double[][] cholesky, double[][] stateProbabilities) => new(
        model, mean, cholesky,
        [.. stateProbabilities.Select((p, s) => p.Select((x, k) => ((1 - PriorShare) * x) + (PriorShare * model.States[s].Probabilities[k]))
            .ToArray())]);

    /// <summary>
    /// Draws the samples from number <paramref name="first"/> on, with ln of prior density over this one; they depend on
    /// plan, seed, stream and number alone.
    /// </summary>
    public void Draw(SamplingPlan plan, ulong seed, string stream, long first, int count, SamplePoints points, Span<double> logRatio)
    {
        int dimension = 0;
        void Fill(string name, double[] column) =>
            plan.Fill(new StreamKey(seed, $"{name}/{stream}"), dimension++, first, column.AsSpan(0, count));
        for (int i = 0; i < points.Normals.Length; i++)
        {
            Fill(model.Normals[i], points.Normals[i]);
            StandardNormal.Quantiles(points.Normals[i].AsSpan(0, count), points.Normals[i].AsSpan(0, count));
        }

        for (int s = 0; s < points.States.Length; s++)
        {
            Fill(model.States[s].Name, points.States[s]);
        }

        for (int i = 0; i < points.Uniforms.Length; i++)
        {
            Fill(model.Uniforms[i], points.Uniforms[i]);
        }

        logRatio[..count].Clear();
        ChooseStates(points, count, logRatio);
        if (cholesky is not null)
        {
            var part = new double[count];
            Fill("part", part);
            Move(points.Normals, part, count, logRatio);
        }
    }

    private void ChooseStates(SamplePoints points, int count, Span<double> logRatio)
    {
        for (int s = 0; s < states.Length; s++)
        {
            ImmutableArray<double> prior = model.States[s].Probabilities;
            for (int row = 0; row < count; row++)
            {
                double left = points.States[s][row];
                int k = 0;
                while (k < prior.Length - 1 && left >= states[s][k])
                {
                    left -= states[s][k++];
                }

                points.States[s][row] = k;
                logRatio[row] += Math.Log(prior[k] / states[s][k]);
            }
        }
    }

    private void Move(double[][] u, double[] part, int count, Span<double> logRatio)
    {
        var x = new double[u.Length];
        for (int row = 0; row < count; row++)
        {
            if (part[row] >= PriorShare)
            {
                // In place, from the last coordinate to the first: those before it are still the independent ones.
                for (int i = u.Length - 1; i >= 0; i--)
                {
                    double moved = mean[i];
                    for (int j = 0; j <= i; j++)
                    {
                        moved += cholesky![i][j] * u[j][row];
                    }

                    u[i][row] = moved;
                }
            }

            logRatio[row] -= Math.Log(PriorShare + ((1 - PriorShare) * Math.Exp(LogMovedOverPrior(u, row, x))));
        }
    }

    private double LogMovedOverPrior(double[][] u, int row, double[] x)
    {
        double log = -lnDeterminant;
        for (int i = 0; i < u.Length; i++)
        {
            double rest = u[i][row] - mean[i];
            for (int j = 0; j < i; j++)
            {
                rest -= cholesky![i][j] * x[j];
            }

            x[i] = rest / cholesky![i][i];
            log += 0.5 * ((u[i][row] * u[i][row]) - (x[i] * x[i]));
        }

        return log;
    }
}
