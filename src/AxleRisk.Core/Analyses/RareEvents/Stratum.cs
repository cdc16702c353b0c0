using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>One state of the discrete factors with its limit state: its design points and its importance sampling.</summary>
internal sealed class Stratum
{
    /// <summary>A term of the sum that is this part of it or more is worth a search.</summary>
    public const double HeavyShare = 0.05;

    private const int MostRestarts = 3;

    private readonly LimitState state;
    private readonly ulong seed;
    private readonly string stream;
    private readonly DesignPointFinder finder;
    private ImportanceRun? run;
    private int restarts;

    /// <summary>Finds the design points of the state.</summary>
    /// <param name="probability">The probability of the discrete state.</param>
    /// <param name="state">Its limit state.</param>
    /// <param name="seed">The study's seed.</param>
    /// <param name="stream">The name of the streams, of this stratum alone.</param>
    /// <param name="cancellation">Cuts the search short.</param>
    public Stratum(double probability, LimitState state, ulong seed, string stream, CancellationToken cancellation = default)
    {
        Probability = probability;
        this.state = state;
        this.seed = seed;
        this.stream = stream;
        finder = new DesignPointFinder(state.Joint, seed, stream);
        finder.Find(cancellation);
        run = CreateRun();
    }

    /// <summary>The probability of the discrete state.</summary>
    public double Probability { get; }

    /// <summary>The design points, the nearest first.</summary>
    public DesignPointSet Points => finder.Points;

    /// <summary>Evaluations spent on design points.</summary>
    public long SearchEvaluations => finder.Evaluations;

    /// <summary>Evaluations spent on sampling, also those that a restart threw away.</summary>
    public long SamplingEvaluations { get; private set; }

    /// <summary>Whether there is anything to sample: some failure was found.</summary>
    public bool CanFail => run is not null;

    /// <summary>An upper bound of P(fail | state), as far as it is known, where no failure was sampled; 0 otherwise.</summary>
    public double Unresolved => run is null ? finder.NotAbove ?? 1 : run.Sums.Sum > 0
        ? 0 : NormalMixture.BoundWithoutFailure(run.Sums.Count);

    /// <summary>P(fail | state); weights of a state that fails more often than not may have a mean above 1.</summary>
    public double Mean => run is { Sums.Count: > 0 } ? Math.Min(1, run.Unit * run.Sums.Mean) : 0;

    /// <summary>This state's part of the failure probability.</summary>
    public double Part => Probability * Mean;

    /// <summary>The standard deviation of one sample's part.</summary>
    public double Spread => run is { Sums.Count: > 1 } ? Probability * run.Unit * run.Sums.StandardError * Math.Sqrt(run.Sums.Count) : 0;

    /// <summary>The number of samples in use.</summary>
    public long Samples => run?.Sums.Count ?? 0;

    /// <summary>The greatest single term of the failure probability.</summary>
    public double LargestTerm => Samples > 0 ? Probability * run!.Unit * run.Largest / Samples : 0;

    /// <summary>The root of the sum of the squares of the terms of the failure probability.</summary>
    public double RootOfSquares => Samples > 0 ? Probability * run!.Unit * Math.Sqrt(run.Sums.SumOfSquares) / Samples : 0;

    /// <summary>
    /// The first-order failure probability of this state's part; of a state without design point unknown and taken as large.
    /// </summary>
    public double FirstOrderPart => Probability * (Points.Beta is null ? 1 : Points.FirstOrder);

    /// <summary>Samples on; then, where one sample stands for a region no design point explains, takes it in and starts again.</summary>
    /// <returns>True unless cancelled on the way.</returns>
    public bool Sample(long rows, RunOptions options)
    {
        if (run is null)
        {
            return true;
        }

        long before = run.Sums.Count;
        bool whole = run.Extend(rows, options);
        SamplingEvaluations += run.Sums.Count - before;
        if (whole && restarts < MostRestarts && run.Heaviest is { } heaviest
            && run.Largest > HeavyShare * run.Sums.Sum && !(Points.Beyond(heaviest) >= -1e-9))
        {
            restarts++;
            if (finder.Follow(heaviest))
            {
                run = CreateRun();
                return Sample(rows, options);
            }
        }

        return whole;
    }

    private ImportanceRun? CreateRun()
    {
        // Where the origin itself fails the event is not rare, and the nominal density serves.
        List<(double[] Centre, double Weight)> centres =
            [.. Points.Points.Select(p => (p.Beta > 0 ? p.U : new double[p.U.Length], StandardNormal.Upper(p.Beta)))];
        return centres.Count == 0 ? null
            : new ImportanceRun(state, new NormalMixture(centres, state.Dimension), seed, $"{stream}/importance {restarts}");
    }
}
