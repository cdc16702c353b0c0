using AxleRisk.Benchmarks;
using BenchmarkDotNet.Running;

if (args is ["table"])
    ThroughputTable.Print();
else
    BenchmarkSwitcher.FromAssembly(typeof(KernelBenchmarks).Assembly).Run(args);
