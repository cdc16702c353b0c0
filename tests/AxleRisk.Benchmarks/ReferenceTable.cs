using System.Diagnostics;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.TimeDomain;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Randomness;

namespace AxleRisk.Benchmarks;

/// <summary>How fast the simulation in time is on one core: simulated seconds of one record per second.</summary>
internal static class ReferenceTable
{
    private const int Periods = 4;
    private const int Repetitions = 7;

    /// <summary>The car of the benchmark scenario at its medians.</summary>
    public static readonly RideParameters Car = new(600, 90, 45e3, 4000, 300e3, 200, 0.5);

    /// <summary>The stops and lift-off that the piecewise linear row runs with.</summary>
    public static readonly RideLimits Pieces = new()
    {
        BumpClearanceM = 0.07,
        BumpStopNPerM = 300e3,
        StaticTyreForceN = RideLimits.StaticTyreForce(Car),
        LiftsOff = true,
        BumpDamping = 0.7,
        ReboundDamping = 1.3,
    };

    /// <summary>Measures and prints.</summary>
    public static void Print()
    {
        SnConstants curve = SnCatalogue.Find("DNV-RP-C203", "E")!.Mean.Constants;
        double[] road = new double[RecordGrid.Bins];
        RoadAmplitudes.Fill(50 / 3.6, 0.2, 1024e-6, 2, road);
        var stream = new RandomStream(new StreamKey(1, "benchmark"));
        var simulation = new SurfaceSimulation();
        Console.WriteLine($"simulated seconds of record per second of processor time, one core, least of {Repetitions} repetitions");
        foreach ((string name, RideLimits limits) in (ReadOnlySpan<(string, RideLimits)>)[("linear", RideLimits.None),
            ("stop, lift-off, two rates", Pieces)])
        {
            var question = new SurfaceQuestion(Car, limits, road, 0.012, curve);
            double damage = 0;
            double seconds = Least(() => damage = simulation.Run([question], stream, Periods)[0].DamagePerSecond.Average());
            Row($"whole, {name}", seconds, RecordBatch.Records * Periods * RecordGrid.Seconds);
            Console.WriteLine($"    damage per second {damage:E6}");
        }
        Stages(road, curve, stream);
    }

    private static void Stages(double[] road, SnConstants curve, RandomStream stream)
    {
        const int rate = SurfaceSimulation.LinearRate;
        var batch = new RecordBatch(rate);
        var states = new AlignedBuffer<double>(RideMatrix.States * RecordBatch.Records);
        const int simulated = RecordBatch.Records * RecordGrid.Seconds;
        Row("  random numbers", Least(() => batch.Draw(stream, 0)), simulated);
        Row("  road by transform", Least(() => batch.Make(road, Car, rate, states)), simulated);
        var ride = new LaneRide(Car, RideLimits.None, rate);
        var cycles = new LaneCycles(256, new MinerSum(0.012, curve));
        var tallies = new LaneTallies();
        void Blocks(bool count)
        {
            for (int first = 0; first < rate * RecordGrid.Seconds; first += 256)
            {
                ride.Run(batch, 0, first, 256, states, cycles.Block, tallies);
                if (count)
                {
                    cycles.CountBlock(256);
                }
            }
        }
        double steps = Least(() => Blocks(false));
        Row("  ride", steps, simulated / 2);
        Row("  cycles and damage", Least(() => Blocks(true)) - steps, simulated / 2);
    }

    private static void Row(string name, double seconds, double simulated) =>
        Console.WriteLine($"{name,-34}{simulated / seconds,12:N0}");

    // Processor time, not the clock's: a busy machine takes the core away.
    private static double Least(Action action)
    {
        for (int i = 0; i < 3; i++)
        {
            action();
            Thread.Sleep(50);
        }
        double least = double.PositiveInfinity;
        for (int i = 0; i < Repetitions; i++)
        {
            int times = 0;
            TimeSpan start = Process.GetCurrentProcess().TotalProcessorTime, spent;
            do
            {
                action();
                times++;
                spent = Process.GetCurrentProcess().TotalProcessorTime - start;
            }
            while (spent.TotalSeconds < 0.2);
            least = Math.Min(least, spent.TotalSeconds / times);
        }
        return least;
    }
}
