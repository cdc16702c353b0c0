using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Randomness;

namespace AxleRisk.Core.Damage.TimeDomain;

/// <summary>
/// Simulates sixteen independent records of a ride over a surface and counts their damage. Each is a chain of periods of
/// <see cref="RecordGrid.Seconds"/> with roads of their own; the cycles are counted through their joints, so that rare large ranges pair as
/// in one long record.
/// </summary>
internal sealed class SurfaceSimulation
{
    /// <summary>Samples a second of the linear ride: 34 a cycle of the wheel hop, and turning points are refined.</summary>
    public const int LinearRate = 512;

    /// <summary>Samples a second of a ride that is linear by pieces, whose error is of second order in the step.</summary>
    public const int PiecewiseRate = 1024;

    /// <summary>Samples that are stepped and then counted at a time; a run can be ended between two blocks.</summary>
    public const int BlockSize = 256;

    private const int Lanes = LaneFourier.Lanes;
    private readonly RecordBatch batch = new(PiecewiseRate);
    private readonly AlignedBuffer<double> states = new(RideMatrix.States * RecordBatch.Records);
    private readonly LaneTallies tallies = new();
    private long samplesDone;

    /// <summary>Samples of eight records stepped and counted so far, over all runs; may be read from another thread.</summary>
    public long SamplesDone => Volatile.Read(ref samplesDone);

    /// <summary>Simulates several rides over the same roads.</summary>
    /// <param name="questions">The rides: rides over one road differ by their limits, rather than by chance.</param>
    /// <param name="stream">The random numbers of the road.</param>
    /// <param name="periods">Periods of each record.</param>
    /// <param name="cancellation">Ends the run at the next block; what was counted so far is dropped.</param>
    /// <exception cref="OperationCanceledException">The run was ended: a record that was cut short has no damage to tell.</exception>
    public SurfaceResult[] Run(
        ReadOnlySpan<SurfaceQuestion> questions, RandomStream stream, int periods, CancellationToken cancellation = default)
    {
        var runs = new OneRun[questions.Length];
        for (int i = 0; i < runs.Length; i++)
        {
            runs[i] = new OneRun(questions[i]);
        }

        for (int period = 0; period < periods; period++)
        {
            batch.Draw(stream, period);
            foreach (OneRun run in runs)
            {
                Period(run, cancellation);
            }
        }
        return [.. runs.Select(r => r.Result(periods))];
    }

    private void Period(OneRun run, CancellationToken cancellation)
    {
        batch.Make(run.Question.Amplitudes, run.Question.Ride, run.Rate, states);
        int samples = run.Rate * RecordGrid.Seconds;
        for (int half = 0; half < 2; half++)
        {
            tallies.Clear();
            for (int first = 0; first < samples; first += BlockSize)
            {
                cancellation.ThrowIfCancellationRequested();
                run.Ride.Run(batch, half * Lanes, first, BlockSize, states, run.Cycles[half].Block, tallies);
                run.Cycles[half].CountBlock(BlockSize);
                Volatile.Write(ref samplesDone, samplesDone + BlockSize);
            }
            run.Totals.Add(tallies);
        }
    }

    private sealed class OneRun(SurfaceQuestion question)
    {
        public SurfaceQuestion Question { get; } = question;

        public int Rate { get; } = question.Limits.IsLinear ? LinearRate : PiecewiseRate;

        public LaneRide Ride { get; } = new(
            question.Ride, question.Limits, question.Limits.IsLinear ? LinearRate : PiecewiseRate);

        public LaneCycles[] Cycles { get; } =
            [.. Enumerable.Range(0, 2)
                .Select(_ => new LaneCycles(BlockSize, new MinerSum(question.StressPerForceMPaPerN, question.Curve)))];

        public Totals Totals { get; } = new();

        public SurfaceResult Result(int periods)
        {
            double seconds = (double)periods * RecordGrid.Seconds;
            var damage = new double[RecordBatch.Records];
            for (int half = 0; half < 2; half++)
            {
                Cycles[half].End(damage.AsSpan(half * Lanes, Lanes));
            }

            for (int i = 0; i < damage.Length; i++)
            {
                damage[i] /= seconds;
            }

            double samples = Rate * seconds * damage.Length, all = seconds * damage.Length;
            return new(
                seconds, damage, Math.Sqrt(Totals.Force / samples), Math.Sqrt(Totals.Tyre / samples), Totals.Bumps / all,
                Totals.Rebounds / all, Totals.OffGround / samples);
        }
    }

    private sealed class Totals
    {
        public double Force { get; private set; }

        public double Tyre { get; private set; }

        public double Bumps { get; private set; }

        public double Rebounds { get; private set; }

        public double OffGround { get; private set; }

        public void Add(LaneTallies t)
        {
            Force += Sum(t.ForceSquares);
            Tyre += Sum(t.TyreSquares);
            Bumps += Sum(t.BumpStrikes);
            Rebounds += Sum(t.ReboundStrikes);
            OffGround += Sum(t.OffGround);
        }

        private static double Sum(AlignedBuffer<double> buffer)
        {
            double sum = 0;
            foreach (double x in buffer.Span)
            {
                sum += x;
            }

            return sum;
        }
    }
}
