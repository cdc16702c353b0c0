using AxleRisk.Core.Scenarios;
using AxleRisk.Files;

namespace AxleRisk.Benchmarks;

/// <summary>The shipped benchmark scenario.</summary>
internal static class BenchmarkScenario
{
    public static Scenario Read()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !Directory.Exists(Path.Combine(folder, "scenarios")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return ScenarioReader.ReadFile(Path.Combine(folder ?? ".", "scenarios", "benchmark-five-legs.toml")).Scenario;
    }
}
