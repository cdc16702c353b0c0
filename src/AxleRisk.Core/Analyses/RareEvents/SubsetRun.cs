using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>
/// One run of subset simulation (Au and Beck 2001, Estimation of small failure probabilities in high dimensions): a rare
/// event as a chain of events of probability 0.1, each sampled by Markov chains from the samples of the one before. The
/// chains move by conditional sampling (Papaioannou, Betz, Zwirglmaier, Straub 2015, MCMC algorithms for subset simulation):
/// a candidate r u + sqrt(1 - r^2) v always has the nominal density, and is accepted where it lies in the event.
/// </summary>
internal static class SubsetRun
{
    private const int ChainLength = 10;

    /// <summary>Events in a row at most: down to 1e-12.</summary>
    private const int MostLevels = 12;

    // The acceptance of the method's authors; the spread is tuned toward it from level to level, never inside one.
    private const double BestAcceptance = 0.44;
    private const double FirstSpread = 0.6;

    /// <summary>Runs once.</summary>
    /// <param name="state">The limit state, without a normal part of its own.</param>
    /// <param name="samples">Samples a level, a multiple of 10.</param>
    /// <param name="seed">The study's seed.</param>
    /// <param name="stream">The name of the streams, of this run alone.</param>
    /// <param name="cancellation">Ends the run after the level under way.</param>
    public static SubsetOutcome Run(LimitState state, int samples, ulong seed, string stream, CancellationToken cancellation)
    {
        int chains = samples / ChainLength;
        double[][] u = Workspace.Columns(state.Dimension, samples);
        NormalDraws.Fill(seed, $"{stream}/level 0", 0, samples, u);
        var g = new double[samples];
        state.Evaluate(u, samples, g);
        long evaluations = samples;
        double probability = 1;
        double spread = FirstSpread;
        double last = double.PositiveInfinity;
        for (int level = 1; level <= MostLevels; level++)
        {
            int[] order = [.. Enumerable.Range(0, samples).OrderBy(row => g[row])];
            double threshold = (g[order[chains - 1]] + g[order[chains]]) / 2;
            if (threshold <= 0)
            {
                int[] failing = [.. order.TakeWhile(row => g[row] <= 0)];
                return new SubsetOutcome(probability * failing.Length / samples, [.. failing.Select(row => PointVectors.Row(u, row))],
                    evaluations);
            }

            if (!(threshold < last) || g[order[0]] == g[order[^1]] || cancellation.IsCancellationRequested)
            {
                break; // no way down: a plateau
            }

            probability /= ChainLength;
            last = threshold;
            int[] seeds = order[..chains];
            double acceptance = Advance(state, threshold, seeds, spread, seed, $"{stream}/level {level}", ref u, ref g);
            evaluations += samples - chains;
            spread = Math.Clamp(spread * Math.Exp(acceptance - BestAcceptance), 0.05, 1);
        }

        // No failing sample among the last: P is at most about what was reached, times what one level cannot resolve.
        int met = g.Count(x => x <= 0);
        return new SubsetOutcome(
            probability * Math.Max(met, 3) / samples,
                [.. Enumerable.Range(0, samples).Where(row => g[row] <= 0).Select(row => PointVectors.Row(u, row))], evaluations);
    }

    private static double Advance(
        LimitState state, double threshold, int[] seeds, double spread, ulong seed, string stream, ref double[][] u, ref double[] g)
    {
        int chains = seeds.Length;
        double keep = Math.Sqrt(1 - (spread * spread));
        double[][] next = Workspace.Columns(u.Length, g.Length);
        var nextG = new double[g.Length];
        for (int chain = 0; chain < chains; chain++)
        {
            Copy(u, seeds[chain], next, chain);
            nextG[chain] = g[seeds[chain]];
        }

        double[][] candidate = Workspace.Columns(u.Length, chains);
        var candidateG = new double[chains];
        int accepted = 0;
        for (int link = 1; link < ChainLength; link++)
        {
            int from = (link - 1) * chains;
            NormalDraws.Fill(seed, stream, link * chains, chains, candidate);
            for (int i = 0; i < candidate.Length; i++)
            {
                for (int chain = 0; chain < chains; chain++)
                {
                    candidate[i][chain] = (keep * next[i][from + chain]) + (spread * candidate[i][chain]);
                }
            }

            state.Evaluate(candidate, chains, candidateG);
            for (int chain = 0; chain < chains; chain++)
            {
                bool inside = candidateG[chain] <= threshold;
                accepted += inside ? 1 : 0;
                Copy(inside ? candidate : next, inside ? chain : from + chain, next, from + chains + chain);
                nextG[from + chains + chain] = inside ? candidateG[chain] : nextG[from + chain];
            }
        }

        (u, g) = (next, nextG);
        return (double)accepted / (chains * (ChainLength - 1));
    }

    private static void Copy(double[][] from, int fromRow, double[][] to, int toRow)
    {
        for (int i = 0; i < from.Length; i++)
        {
            to[i][toRow] = from[i][fromRow];
        }
    }
}

/// <summary>What one run gave.</summary>
/// <param name="Probability">The estimate; where no sample failed, the probability down to which the run looked.</param>
/// <param name="Failing">The failing samples of the last level.</param>
/// <param name="Evaluations">Evaluations spent.</param>
internal sealed record SubsetOutcome(double Probability, IReadOnlyList<double[]> Failing, long Evaluations);
