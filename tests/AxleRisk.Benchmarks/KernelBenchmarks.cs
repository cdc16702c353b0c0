using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using BenchmarkDotNet.Attributes;

namespace AxleRisk.Benchmarks;

/// <summary>A block of 256 evaluations of the five-leg case.</summary>
public class KernelBenchmarks
{
    private readonly FiveLegCase five = new();
    private BatchKernel batch = null!;

    [GlobalSetup]
    public void Setup() => batch = new(five.Curves, CountingMethod.Dirlik, new DamageLayout(FiveLegCase.LegCount));

    [Benchmark(Baseline = true, OperationsPerInvoke = FiveLegCase.Rows)]
    public void Scalar() => ScalarKernel.Evaluate(
        five.Columns, FiveLegCase.Rows, five.Curves, CountingMethod.Dirlik, five.DamageByLeg, five.DamagePerKm);

    [Benchmark(OperationsPerInvoke = FiveLegCase.Rows)]
    public void Batch() => batch.Evaluate(five.Columns, FiveLegCase.Rows, five.DamageByLeg, five.DamagePerKm);

    [Benchmark(OperationsPerInvoke = FiveLegCase.Rows)]
    public void SampleThirteenFactors() => five.Sample(0);
}
