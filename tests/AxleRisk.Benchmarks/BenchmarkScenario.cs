using AxleRisk.Core.Scenarios;
using AxleRisk.Files;

namespace AxleRisk.Benchmarks;

/// <summary>The shipped scenarios.</summary>
internal static class BenchmarkScenario
{
    public static Scenario Read(string name = "benchmark-five-legs")
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !Directory.Exists(Path.Combine(folder, "scenarios")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return ScenarioReader.ReadFile(Path.Combine(folder ?? ".", "scenarios", $"{name}.toml")).Scenario;
    }
}
