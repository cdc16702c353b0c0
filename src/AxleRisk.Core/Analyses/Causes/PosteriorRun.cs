using System.Collections.Immutable;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>The run the answer rests on: groups of rows, each summed in order by one thread, so that no digit depends on threads.</summary>
internal static class PosteriorRun
{
    /// <summary>Groups of the jackknife.</summary>
    public const int Groups = 40;

    /// <summary>Runs it with the proposal of a pilot.</summary>
    /// <param name="model">What is weighed.</param>
    /// <param name="pilot">The pilot.</param>
    /// <param name="settings">Seed, plan.</param>
    /// <param name="rows">Rows.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <param name="measurable">The items that could be measured; none where left out.</param>
    /// <returns>The groups that were finished, from the first on; all unless cancelled.</returns>
    public static PosteriorTally[] Run(
        EvidenceModel model, Pilot pilot, StudySettings settings, long rows, RunOptions options, params ImmutableArray<int> measurable)
    {
        int block = (int)Math.Clamp(rows / Groups, 1, StudySettings.BlockSize);
        long blocks = rows / block;
        SamplingPlan plan = SamplingPlan.FromName(settings.Sampling, blocks * block);
        var groups = new PosteriorTally?[Groups];
        long done = 0;
        var workers = BlockRunner.CreateWorkers(options, Groups, () => (
            Worker: model.CreateWorker(block), Points: new SamplePoints(model, block), Log: new double[block], Ratio: new double[block]));
        BlockRunner.Run(workers, 0, Groups, (buffers, group) =>
        {
            var tally = new PosteriorTally(model, measurable);
            for (long b = group * blocks / Groups; b < (group + 1) * blocks / Groups; b++)
            {
                if (options.Cancellation.IsCancellationRequested)
                {
                    return;
                }

                pilot.Proposal.Draw(plan, settings.Seed, "causes", b * block, block, buffers.Points, buffers.Ratio);
                buffers.Worker.Evaluate(buffers.Points, block, buffers.Log);
                buffers.Worker.EvaluateTwins(buffers.Points, block);
                for (int row = 0; row < block; row++)
                {
                    // A common factor keeps the weights near 1 however small the likelihood is.
                    double w = Math.Exp(buffers.Ratio[row] + buffers.Log[row] - pilot.Greatest);
                    buffers.Log[row] = double.IsNaN(w) ? 0 : w;
                }

                tally.Add(buffers.Worker, buffers.Log);
                long soFar = Interlocked.Add(ref done, block);
                options.Progress?.Invoke(soFar);
            }

            groups[group] = tally;
        }, options.Cancellation);
        return [.. groups.TakeWhile(g => g is not null).Select(g => g!)];
    }
}
