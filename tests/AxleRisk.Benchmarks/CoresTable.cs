using System.Diagnostics;
using System.Globalization;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;

namespace AxleRisk.Benchmarks;

/// <summary>
/// One <c>risk</c> on one core and on more, as a Markdown table: how many times as fast, how much more processor time (cores that are
/// slower together), and the part of the work that only one thread does: the time before the first block is done and after the last.
/// </summary>
internal static class CoresTable
{
    private const int Rounds = 3;
    private const int ManyWorkers = 16;

    /// <summary>Measures and prints.</summary>
    /// <param name="evaluations">Evaluations of a run.</param>
    public static void Print(long evaluations)
    {
        var model = new LifeModel(BenchmarkScenario.Read());
        int[] threads = [.. new[] { 1, 2, 4, 8, 12, 16, 32, 64 }.Where(t => t <= Environment.ProcessorCount)];
        Measure(model, 2_000_000, Environment.ProcessorCount); // compiled and warm
        Timing[][] runs = [.. Enumerable.Range(0, Rounds).Select(_ => threads.Select(t => Measure(model, evaluations, t)).ToArray())];
        Timing one = runs.Select(r => r[0]).MinBy(r => r.Seconds);
        Console.WriteLine($"{evaluations:#,0} evaluations, {Rounds} rounds, the best of each, {Environment.ProcessorCount} cores\n");
        Console.WriteLine("| threads | s | times one | processor time, times one | done by one thread alone, of the work |\n| --- | --- | --- | --- | --- |");
        for (int i = 0; i < threads.Length; i++)
        {
            Timing best = runs.Select(r => r[i]).MinBy(r => r.Seconds);
            Console.WriteLine(Row(threads[i].ToString(CultureInfo.InvariantCulture), best, one));
        }

        if (!threads.Contains(ManyWorkers))
        {
            Timing many = Enumerable.Range(0, Rounds).Select(_ => Measure(model, evaluations, ManyWorkers)).MinBy(r => r.Alone);
            Console.WriteLine(Row($"{ManyWorkers} on {Environment.ProcessorCount} cores", many, one));
        }
    }

    private static string Row(string name, Timing t, Timing one) => string.Create(
        CultureInfo.InvariantCulture,
            $"| {name} | {t.Seconds:0.000} | {one.Seconds / t.Seconds:0.00} | {t.Processor / one.Processor:0.00} | {100 * t.Alone / one.Seconds:0.00} % ({1000 * t.Alone:0} ms, {1000 * t.Before:0} before) |");

    private static Timing Measure(LifeModel model, long evaluations, int threads)
    {
        var settings = new StudySettings(evaluations, 1, RiskAnalysis.DefaultSampling(model));
        TimeSpan before = Environment.CpuUsage.TotalTime;

        // Told from all threads at once: a lock here would be what is measured.
        double first = double.PositiveInfinity, last = 0;
        var watch = Stopwatch.StartNew();
        RiskAnalysis.Run(model, settings, new RiskQuestion { DistancesKm = [100_000] }, new RunOptions
        {
            Threads = threads,
            Progress = rows =>
            {
                if (double.IsPositiveInfinity(Volatile.Read(ref first)))
                {
                    Interlocked.CompareExchange(ref first, watch.Elapsed.TotalSeconds, double.PositiveInfinity);
                }

                if (rows == evaluations)
                {
                    Volatile.Write(ref last, watch.Elapsed.TotalSeconds);
                }
            },
        });
        double all = watch.Elapsed.TotalSeconds;
        return new(all, first, all - last, (Environment.CpuUsage.TotalTime - before).TotalSeconds);
    }

    private readonly record struct Timing(double Seconds, double Before, double After, double Processor)
    {
        public double Alone => Before + After;
    }
}
