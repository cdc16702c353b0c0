using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>
/// Samples what is unknown given the data, combination by combination: pilots follow one another toward the data, their weights
/// tempered where few rows carry all (Oh and Berger 1992); then replicates of low-discrepancy points, each with a sample of
/// vehicles of its own, are weighted exactly.
/// </summary>
internal sealed class PosteriorSampler
{
    /// <summary>Independent replicates: they give the intervals.</summary>
    public const int Replicates = 8;

    private const int MostPilots = 14;
    private const double Widening = 1.15;
    private const double GoodShare = 0.4;
    private const double WorthwhileGain = 1.15;

    /// <summary>A combination whose evidence lies so far below the best is left out: e^-16 is one in ten million.</summary>
    private const double Negligible = -16;

    private readonly LearnModel model;
    private readonly ulong seed;
    private readonly RunOptions options;
    private readonly int dimension;
    private readonly LearnModel[] models;
    private readonly LearnWorker?[][] workers;
    private long evaluations;

    public PosteriorSampler(LearnModel model, ulong seed, RunOptions options)
    {
        (this.model, this.seed, this.options) = (model, seed, options);
        dimension = model.Unknowns.Columns.Length;
        models = [.. Enumerable.Range(0, Replicates).Select(r => model.WithVehicles(seed, r))];
        workers = BlockRunner.CreateWorkers(options, long.MaxValue, () => new LearnWorker?[Replicates]);
    }

    /// <summary>Evaluations of the damage model so far.</summary>
    public long Evaluations => evaluations;

    /// <summary>Pilots drawn.</summary>
    public int Pilots { get; private set; }

    /// <summary>A sample of the prior, with ln likelihood beside.</summary>
    /// <param name="rows">About how many rows.</param>
    public (PosteriorSample Sample, double[] LogLikelihood) Prior(int rows)
    {
        var combinations = model.Unknowns.Combinations;
        int[] counts = [.. combinations.Select(c => Math.Max(64, PowerOfTwo(rows * c.Probability)))];
        Rows all = Draw(counts, (c, first, count, z) => NormalProposal.Prior(dimension).Draw(false, seed, $"prior{c}", first, count, z));
        double[] log = [.. all.Combination.Select(c => Math.Log(combinations[c].Probability / counts[c]))];
        return (new PosteriorSample(all.Combination, all.Z, log, all.Failed, new int[log.Length]), all.LogLikelihood);
    }

    /// <summary>A sample of the posterior with ln of the marginal likelihood by replicate.</summary>
    /// <param name="prior">The sample of the prior.</param>
    /// <param name="priorLog">ln likelihood of its rows.</param>
    /// <param name="rows">About how many rows.</param>
    /// <param name="pilotRows">Rows of one pilot.</param>
    public (PosteriorSample Sample, double[] LogMarginal) Posterior(PosteriorSample prior, double[] priorLog, int rows, int pilotRows)
    {
        var combinations = model.Unknowns.Combinations;
        (NormalProposal Proposal, double LogEvidence)[] found =
            [.. combinations.Select((_, c) => Pilot(c, prior, priorLog, pilotRows))];
        double[] log = [.. found.Select((f, c) => f.LogEvidence + Math.Log(combinations[c].Probability))];
        double best = log.Max();
        double[] share = [.. log.Select(l => l - best < Negligible || double.IsNaN(l) ? 0 : Math.Sqrt(Math.Exp(l - best)))];
        double total = share.Sum();
        const int parts = NormalProposal.MovedParts + 1;
        int[] ofPrior = [.. share.Select(s => s == 0 ? 0 : Math.Max(4, PowerOfTwo((double)rows / Replicates / parts * s / total)))];
        int[] ofReplicate = [.. ofPrior.Select(n => n * parts)];
        int[] counts = [.. Enumerable.Range(0, Replicates * combinations.Length).Select(i => ofReplicate[i % combinations.Length])];
        Rows all = Draw(counts, (block, first, count, z) =>
        {
            (int replicate, int c) = Math.DivRem(block, combinations.Length);
            int few = count / parts;
            found[c].Proposal.Draw(false, seed, $"posterior{replicate}/{c}/prior", first, few, z);
            found[c].Proposal.Draw(true, seed, $"posterior{replicate}/{c}", first + few, count - few, z);
        }, combinations.Length);
        var weight = new double[all.Combination.Length];
        for (int row = 0; row < weight.Length; row++)
        {
            int c = all.Combination[row];
            weight[row] = all.LogLikelihood[row] + found[c].Proposal.LogPriorOverMixture(all.Z, row)
                + Math.Log(combinations[c].Probability / ofReplicate[c]);
        }

        int[] group = [.. all.Block.Select(b => b / combinations.Length)];
        double[] marginal = [.. Enumerable.Range(0, Replicates).Select(r => LogSum(weight.Where((_, row) => group[row] == r)))];

        // Each replicate has its own sample of vehicles, and so an answer of its own: they count alike.
        for (int row = 0; row < weight.Length; row++)
        {
            weight[row] -= double.IsFinite(marginal[group[row]]) ? marginal[group[row]] : 0;
        }

        return (new PosteriorSample(all.Combination, all.Z, weight, all.Failed, group), marginal);
    }

    /// <summary>The effective share of a sample of normal densities, weighed by the exact posterior over them.</summary>
    /// <param name="parts">The densities: their combination and probability.</param>
    public double ShareOf(IReadOnlyList<(int Combination, double Probability, NormalProposal Fit)> parts)
    {
        const int rows = 1024;
        List<double> weights = [];
        foreach ((int combination, double probability, NormalProposal fit) in parts)
        {
            int count = (int)Math.Round(rows * probability);
            if (count == 0)
            {
                continue;
            }

            Rows drawn = Draw([count], (_, first, n, z) => fit.Draw(true, seed, $"shape/{combination}", first, n, z), 1, combination);
            weights.AddRange(drawn.LogLikelihood.Select((log, row) => log + fit.LogPriorOverMoved(drawn.Z, row)
                + Math.Log(model.Unknowns.Combinations[combination].Probability / probability)));
        }

        return Size(Weights([.. weights], 1)) / weights.Count;
    }

    /// <summary>Evaluates rows of other samples, one after the other, and gives what is made of the worker at each.</summary>
    public IReadOnlyList<double[]> Visit(LearnModel other, PosteriorSample sample, int[] rows, Func<LearnWorker, int, double[]> each)
    {
        long before = evaluations;
        RunOptions untold = options with { Progress = null };
        BlockRun<double[]> run = BlockRunner.RunShared(rows.Length, 1, untold, other.CreateWorker, (worker, i, _) =>
        {
            double[][] z = [.. sample.Z.Select(c => new[] { c[rows[i]] })];
            double[] log = new double[1], made = [];
            worker.Evaluate(sample.Combination[rows[i]], z, 0, 1, log, _ => made = each(worker, (int)i));
            Told(1, other);
            return made;
        });
        options.Cancellation.ThrowIfCancellationRequested();
        evaluations = before + ((long)rows.Length * other.EvaluationsEach);
        return run.Blocks;
    }

    private (NormalProposal Proposal, double LogEvidence) Pilot(int combination, PosteriorSample prior, double[] priorLog, int rows)
    {
        int[] own = [.. Enumerable.Range(0, priorLog.Length).Where(r => prior.Combination[r] == combination)];
        double[][] z = [.. prior.Z.Select(c => own.Select(r => c[r]).ToArray())];
        double[] log = [.. own.Select(r => priorLog[r])];
        NormalProposal proposal = NormalProposal.Prior(dimension), best = proposal;
        double bestShare = 0, evidence = LogSum(log) - Math.Log(log.Length);
        for (int number = 0; number < MostPilots && dimension > 0 && log.Any(double.IsFinite); number++)
        {
            double power = PowerFor(log, Math.Min(Math.Max(60, 10 * dimension), log.Length / 4.0));
            double[] weights = Weights(log, power);
            if (proposal.Fitted(z, weights, Widening) is not { } moved)
            {
                break;
            }

            proposal = moved;
            int parts = NormalProposal.MovedParts + 1, count = rows / parts * parts;
            Rows drawn = Draw([count], (_, first, n, to) =>
            {
                proposal.Draw(false, seed, $"pilot{number}/{combination}/prior", first, n / parts, to);
                proposal.Draw(true, seed, $"pilot{number}/{combination}", first + (n / parts), n - (n / parts), to);
            }, 1, combination);
            Pilots++;
            (z, log) = (drawn.Z, [.. drawn.LogLikelihood.Select((l, row) => l + proposal.LogPriorOverMixture(drawn.Z, row))]);
            double share = Size(Weights(log, 1)) / count;
            bool isGain = share > WorthwhileGain * bestShare;
            if (share > bestShare)
            {
                (best, bestShare, evidence) = (proposal, share, LogSum(log) - Math.Log(count));
            }

            if (share > GoodShare || (power >= 1 && !isGain))
            {
                break;
            }
        }

        return (best, evidence);
    }

    private sealed record Rows(int[] Combination, int[] Block, double[][] Z, double[] LogLikelihood, double[][] Failed);

    // Blocks of rows are filled one after another, and evaluated in pieces by the threads; each row has its place.
    private Rows Draw(int[] counts, Action<int, int, int, double[][]> fill, int combinations = 0, int only = -1)
    {
        int total = counts.Sum();
        double[][] z = Workspace.Columns(dimension, total);
        var combination = new int[total];
        var block = new int[total];
        var log = new double[total];
        double[][] failed = Workspace.Columns(model.Asked.Length, total);
        const int piece = 8;
        List<(int First, int Count, int Replicate)> pieces = [];
        for (int b = 0, first = 0; b < counts.Length; first += counts[b++])
        {
            if (counts[b] > 0)
            {
                fill(b, first, counts[b], z);
            }

            int own = only >= 0 ? only : combinations > 0 ? b % combinations : b;
            combination.AsSpan(first, counts[b]).Fill(own);
            block.AsSpan(first, counts[b]).Fill(b);
            for (int from = first; from < first + counts[b]; from += piece)
            {
                pieces.Add((from, Math.Min(piece, first + counts[b] - from), combinations > 0 && only < 0 ? b / combinations : 0));
            }
        }

        void Work(LearnWorker?[] ofThread, long number)
        {
            (int first, int count, int replicate) = pieces[(int)number];
            LearnWorker worker = ofThread[replicate] ??= models[replicate].CreateWorker();
            worker.Evaluate(combination[first], z, first, count, log.AsSpan(first, count), row =>
            {
                for (int k = 0; k < failed.Length; k++)
                {
                    failed[k][first + row] = worker.Curves[0].At(model.Asked[k]).Failed;
                }
            });
            for (int row = first; row < first + count; row++)
            {
                log[row] = double.IsNaN(log[row]) ? double.NegativeInfinity : log[row];
            }

            Told(count, model);
        }

        // A row is a piece's ln likelihood, and behind it its failure probabilities by distance.
        long before = evaluations;
        IReadOnlyList<double[]> all = BlockRunner.Shared(options, pieces.Count, (from, to) =>
        {
            BlockRunner.Run(workers, from, to, Work, options.Cancellation);
            return options.Share is null ? [] : [.. pieces[(int)from..(int)to].Select(p => (double[])
                [.. log.AsSpan(p.First, p.Count), .. failed.SelectMany(f => f.AsSpan(p.First, p.Count).ToArray())])];
        });
        for (int number = 0; number < all.Count; number++)
        {
            (int first, int count, _) = pieces[number];
            all[number].AsSpan(0, count).CopyTo(log.AsSpan(first));
            for (int k = 0; k < failed.Length; k++)
            {
                all[number].AsSpan((k + 1) * count, count).CopyTo(failed[k].AsSpan(first));
            }
        }

        evaluations = before + ((long)total * model.EvaluationsEach);
        return new Rows(combination, block, z, log, failed);
    }

    private void Told(int rows, LearnModel of)
    {
        long soFar = Interlocked.Add(ref evaluations, (long)rows * of.EvaluationsEach);
        options.Progress?.Invoke(soFar);
    }

    private static int PowerOfTwo(double x) => x < 1 ? 0 : 1 << (int)Math.Floor(Math.Log2(x) + 1e-9);

    private static double LogSum(IEnumerable<double> logs)
    {
        double[] all = [.. logs];
        double greatest = all.Length == 0 ? double.NegativeInfinity : all.Max();
        if (!double.IsFinite(greatest))
        {
            return double.NegativeInfinity;
        }

        CompensatedSum sum = default;
        foreach (double log in all)
        {
            sum.Add(Math.Exp(log - greatest));
        }

        return greatest + Math.Log(sum.Value);
    }

    private static double[] Weights(double[] log, double power)
    {
        double greatest = log.Max();
        return [.. log.Select(l => double.IsNegativeInfinity(l) ? 0 : Math.Exp(power * (l - greatest)))];
    }

    private static double Size(double[] weights) => weights.Sum() is var s ? s * s / weights.Sum(w => w * w) : 0;

    // The greatest power up to 1 at which the weights still have the effective size wanted; by halving, on the side that has it.
    private static double PowerFor(double[] log, double wanted)
    {
        if (Size(Weights(log, 1)) >= wanted)
        {
            return 1;
        }

        (double low, double high) = (0.0, 1.0);
        for (int i = 0; i < 40; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Size(Weights(log, middle)) >= wanted ? (middle, high) : (low, middle);
        }

        return low;
    }
}
