using System.Diagnostics;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Studies;

namespace AxleRisk.Benchmarks;

/// <summary>A short table of evaluations per second on one core, in a few seconds and without the benchmark library's own runs.</summary>
internal static class ThroughputTable
{
    private const int Repetitions = 101;
    private const double SecondsEach = 0.01;

    /// <summary>Measures and prints.</summary>
    public static void Print()
    {
        var five = new FiveLegCase();
        double scalar = SecondsPerBlock(() => ScalarKernel.Evaluate(
            five.Columns, FiveLegCase.Rows, five.Curves, CountingMethod.Dirlik, five.DamageByLeg, five.DamagePerKm));
        double[] oracle = [.. five.DamagePerKm];
        Console.WriteLine($"five legs, {FiveLegCase.Rows} rows a block, least of {Repetitions} repetitions");
        Console.WriteLine("                              us/evaluation  evaluations/s  times scalar  greatest difference");
        Row("scalar kernel", scalar, scalar, 0);
        foreach (VectorWidth width in VectorWidths.Supported.Where(w => w != VectorWidth.Scalar).Reverse())
        {
            var batch = new BatchKernel(five.Curves, CountingMethod.Dirlik, new DamageLayout(FiveLegCase.LegCount), width);
            double seconds = SecondsPerBlock(
                () => batch.Evaluate(five.Columns, FiveLegCase.Rows, five.DamageByLeg, five.DamagePerKm));
            Row($"batch kernel, {width}", seconds, scalar, oracle.Zip(five.DamagePerKm, (a, b) => Math.Abs(b / a - 1)).Max());
        }

        double sampling = SecondsPerBlock(() => five.Sample(0));
        Row($"sampling {FiveLegCase.Factors} factors", sampling, scalar, 0);
        PrintQuantiles(scalar);
        PrintWholeRun(scalar / FiveLegCase.Rows * StudySettings.BlockSize);
    }

    /// <summary>What a factor's values cost from its uniform numbers, against what solving for them one by one does.</summary>
    private static void PrintQuantiles(double scalar)
    {
        double[] p = [.. Enumerable.Range(0, FiveLegCase.Rows).Select(i => (((i * 97) % FiveLegCase.Rows) + 0.5) / FiveLegCase.Rows)];
        double[] x = new double[p.Length];
        foreach (Distribution d in new Distribution[]
        {
            new Lognormal(1, 0.2), new Pert(1.8, 3.1, 3.6), new Gamma(3, 1), new ScaledBeta(0.5, 0.5),
            new Truncated(new Pert(1.8, 3.1, 3.6), 2, 3),
        })
        {
            Row($"values of {d.Family}{(d is Truncated ? ", cut" : "")}", SecondsPerBlock(() => d.Quantiles(p, x)), scalar, 0);
            Row("  one by one", SecondsPerBlock(() => OneByOne(d, p, x)), scalar, 0);
        }
    }

    private static void OneByOne(Distribution d, double[] p, double[] x)
    {
        for (int i = 0; i < p.Length; i++)
        {
            x[i] = d.Quantile(p[i]);
        }
    }

    /// <summary>The stages of a run of the shipped benchmark scenario, one block each.</summary>
    private static void PrintWholeRun(double scalar)
    {
        var model = new LifeModel(BenchmarkScenario.Read());
        var settings = new StudySettings(1L << 40, 1, "plain");
        var plan = new BlockPlan(settings, model.Factors.ColumnNames.Length);
        Workspace workspace = model.CreateWorkspace(StudySettings.BlockSize);
        double[][] values = model.CreateColumns(StudySettings.BlockSize);
        long block = 0;
        double draw = SecondsPerBlock(() => model.Draw(plan.PlanOf(0), 1, "", block++ * StudySettings.BlockSize, StudySettings.BlockSize,
            workspace, values));
        double evaluate = SecondsPerBlock(() => model.Evaluate(values, StudySettings.BlockSize, workspace));
        var tally = new RiskTally(model, 1, plan);
        double whole = SecondsPerBlock(() => tally.Work(block++));
        WholeRow("draw factor values", draw, scalar);
        WholeRow("assemble and evaluate", evaluate, scalar);
        WholeRow("whole block of risk", whole, scalar);
    }

    private static void WholeRow(string name, double secondsPerBlock, double scalarPerBlock)
    {
        double each = secondsPerBlock / StudySettings.BlockSize;
        Console.WriteLine($"{name,-30}{each * 1e6,13:F4}{1 / each,15:N0}{scalarPerBlock / secondsPerBlock,14:F1}");
    }

    private static void Row(string name, double secondsPerBlock, double scalar, double difference)
    {
        double each = secondsPerBlock / FiveLegCase.Rows;
        Console.WriteLine($"{name,-30}{each * 1e6,13:F4}{1 / each,15:N0}{scalar / secondsPerBlock,14:F1}{difference,21:E1}");
    }

    internal static double SecondsPerBlock(Action block)
    {
        // Long enough for the compiler to reach its last tier, with pauses for it to do so.
        for (int i = 0; i < 100; i++)
        {
            Time(block, 10);
            Thread.Sleep(5);
        }

        int blocks = Math.Max(1, (int)(SecondsEach / Time(block, 1)));
        double[] times = [.. Enumerable.Range(0, Repetitions).Select(_ => Time(block, blocks) / blocks).Order()];
        return times[0];
    }

    private static double Time(Action block, int times)
    {
        long start = Stopwatch.GetTimestamp();
        for (int i = 0; i < times; i++)
        {
            block();
        }

        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }
}
