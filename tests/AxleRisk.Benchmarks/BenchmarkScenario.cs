using AxleRisk.Core.Scenarios;
using AxleRisk.Files;

namespace AxleRisk.Benchmarks;

/// <summary>The shipped scenarios.</summary>
internal static class BenchmarkScenario
{
    /// <summary>Their folder.</summary>
    public static string Folder { get; } = Find(AppContext.BaseDirectory);

    public static Scenario Read(string name = "benchmark-five-legs") =>
        ScenarioReader.ReadFile(Path.Combine(Folder, $"{name}.toml")).Scenario;

    private static string Find(string? folder)
    {
        while (folder is not null && !Directory.Exists(Path.Combine(folder, "scenarios")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return Path.Combine(folder ?? ".", "scenarios");
    }
}
