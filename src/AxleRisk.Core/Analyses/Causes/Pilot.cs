using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>A small sample drawn to see where the evidence lies: its points and their log weights, rows in order.</summary>
internal sealed record Pilot(Proposal Proposal, double[][] Normals, double[][] States, double[] LogWeight)
{
    /// <summary>The greatest log weight; negative infinity where the evidence contradicts every row.</summary>
    public double Greatest { get; } = LogWeight.Max();

    /// <summary>The effective sample size, (sum of weights)^2 / sum of squares (Kong 1992), of the weights to a power.</summary>
    public double EffectiveSize(double power = 1)
    {
        CompensatedSum sum = default, squares = default;
        foreach (double log in LogWeight)
        {
            double w = Weight(log, power);
            sum.Add(w);
            squares.Add(w * w);
        }

        return squares.Value > 0 ? sum.Value * sum.Value / squares.Value : 0;
    }

    /// <summary>A weight to a power, the greatest being 1; a row that contradicts the evidence weighs nothing at any power.</summary>
    public double Weight(double log, double power) => double.IsNegativeInfinity(log) ? 0 : Math.Exp(power * (log - Greatest));

    /// <summary>Draws <paramref name="rows"/> rows.</summary>
    public static Pilot Run(EvidenceModel model, Proposal proposal, StudySettings settings, string stream, int rows, RunOptions options)
    {
        SamplingPlan plan = SamplingPlan.FromName(settings.Sampling, rows);
        var normals = Workspace.Columns(model.Normals.Length, rows);
        var states = Workspace.Columns(model.States.Length, rows);
        var logWeight = new double[rows];
        BlockRunner.Run(
            rows, StudySettings.BlockSize, options with { Progress = null },
            () => (Worker: model.CreateWorker(StudySettings.BlockSize), Points: new SamplePoints(model, StudySettings.BlockSize)),
            (buffers, first, count) =>
            {
                var log = new double[count];
                Span<double> weights = logWeight.AsSpan((int)first, count);
                proposal.Draw(plan, settings.Seed, stream, first, count, buffers.Points, weights);
                buffers.Worker.Evaluate(buffers.Points, count, log);
                for (int row = 0; row < count; row++)
                {
                    weights[row] = double.IsNaN(log[row]) ? double.NegativeInfinity : weights[row] + log[row];
                }

                Keep(buffers.Points.Normals, normals, (int)first, count);
                Keep(buffers.Points.States, states, (int)first, count);
                return 0;
            });
        options.Cancellation.ThrowIfCancellationRequested();
        return new Pilot(proposal, normals, states, logWeight);
    }

    private static void Keep(double[][] from, double[][] to, int first, int count)
    {
        for (int i = 0; i < from.Length; i++)
        {
            Array.Copy(from[i], 0, to[i], first, count);
        }
    }
}
