namespace AxleRisk.App.Tests.Files;

/// <summary>The files of the repository that the tests read.</summary>
internal static class Repository
{
    private static readonly string Root = Find(AppContext.BaseDirectory);

    // What learn wrote is no scenario of its own.
    public static string[] Scenarios =>
    [
        .. Directory.GetFiles(PathTo("scenarios"), "*.toml").Where(s => !s.EndsWith("-learned.toml", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>The names of the shipped scenarios.</summary>
    public static IEnumerable<string> Names => Scenarios.Select(s => Path.GetFileNameWithoutExtension(s));

    public static string PathTo(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string Find(string folder) =>
        File.Exists(Path.Combine(folder, "AxleRisk.sln"))
            ? folder
            : Find(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("the tests do not run inside the repository"));
}
