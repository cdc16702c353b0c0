using AxleRisk.Benchmarks;
using BenchmarkDotNet.Running;

switch (args)
{
    case ["table"]:
        ThroughputTable.Print();
        break;
    case ["modes"]:
        ModesTable.Print();
        break;
    case ["coverage"]:
        CoverageStudy.Print();
        break;
    case ["causes"]:
        CausesStudy.Print();
        break;
    case ["reference"]:
        ReferenceTable.Print();
        break;
    case ["agreement"]:
        AgreementTable.Print();
        break;
    case ["stops"]:
        StopTable.Print();
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(KernelBenchmarks).Assembly).Run(args);
        break;
}
