using AxleRisk.App.Tests.Fuzzing;
using AxleRisk.Benchmarks;
using AxleRisk.Benchmarks.Mutants;
using BenchmarkDotNet.Running;

switch (args)
{
    case ["table"]:
        ThroughputTable.Print();
        break;
    case ["modes"]:
        ModesTable.Print();
        break;
    case ["modes", var only]:
        ModesTable.Print(only);
        break;
    case ["coverage"]:
        CoverageStudy.Print();
        break;
    case ["causes"]:
        CausesStudy.Print();
        break;
    case ["learning", "speed"]:
        LearningStudy.PrintSpeed();
        break;
    case ["learning"]:
        LearningStudy.Print();
        break;
    case ["light-truck", "write"]:
        LightTruckStudy.Write();
        break;
    case ["light-truck", string truths]:
        LightTruckStudy.Print(int.Parse(truths));
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
    case ["examples", string folder]:
        return await ExampleAnswers.Write(Console.In, folder);
    case ["mutants", string repository, string count, string seed, string list]:
        MutantPlanter.Plant(repository, int.Parse(count), ulong.Parse(seed), list);
        break;
    case ["console", .. string[] scenarios]:
        ConsoleTable.Print(scenarios);
        break;
    case ["cores", string evaluations]:
        CoresTable.Print(long.Parse(evaluations));
        break;
    case ["hostile", "text", string seed, string number]:
        Console.Write(new HostileTexts(ulong.Parse(seed)).Scenario(long.Parse(number)));
        break;
    case ["hostile", string texts, string valid, string seed]:
        HostileStudy.Print(int.Parse(texts), int.Parse(valid), ulong.Parse(seed));
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(KernelBenchmarks).Assembly).Run(args);
        break;
}

return 0;
