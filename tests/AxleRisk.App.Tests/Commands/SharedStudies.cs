using System.Collections.Concurrent;

namespace AxleRisk.App.Tests.Commands;

/// <summary>
/// What studies gave, kept for the tests that ask the same of the same file: an answer's text, JSON and table, and the sections of its
/// report, are told of one run. Files are the shipped ones and those of <see cref="FileOf"/>, which nothing changes.
/// </summary>
internal static class SharedStudies
{
    // How an answer is told, which changes nothing of it; all but the first have a path behind them.
    private static readonly string[] Forms = ["--json", "--csv", "--card", "--out"];

    // These write or read besides, in the midst of the run.
    private static readonly string[] Besides = ["--resume", "--part", "--data-folder"];

    private static readonly string Folder = TemporaryFolder.New();
    private static readonly ConcurrentDictionary<string, Lazy<object>> Known = new();
    private static readonly ConcurrentDictionary<string, Lazy<string>> Files = new();

    /// <summary>The result that these arguments ask for: a known one, or what the study gives.</summary>
    public static object Of(string[] args, Func<object> study) =>
        args.Any(Besides.Contains) || (args[0] == "risk" && args.Contains("--out")) || args.Where(File.Exists).Any(a => !IsFixed(a))
            ? study() : Known.GetOrAdd(string.Join('\n', Question(args)), _ => new Lazy<object>(study)).Value;

    /// <summary>The same for who asks without a command line of its own.</summary>
    public static T Of<T>(string[] args, Func<T> study)
        where T : class => (T)Of(args, (Func<object>)study);

    /// <summary>The file of this content and no other; beside it the data of the shipped scenarios.</summary>
    public static string FileOf(string content) => Files.GetOrAdd(content, text => new Lazy<string>(() =>
    {
        string folder = Directory.CreateDirectory(Path.Combine(Folder, Guid.NewGuid().ToString("N"))).FullName;
        foreach (string data in Directory.GetFiles(Path.GetDirectoryName(Cli.Shipped("desert-crossing"))!, "*.csv"))
        {
            File.Copy(data, Path.Combine(folder, Path.GetFileName(data)));
        }

        string file = Path.Combine(folder, "case.toml");
        File.WriteAllText(file, text);
        return file;
    })).Value;

    private static bool IsFixed(string path) => path.StartsWith(Folder, StringComparison.Ordinal)
        || path.StartsWith(Path.GetDirectoryName(Cli.Shipped("desert-crossing"))!, StringComparison.Ordinal);

    private static IEnumerable<string> Question(string[] args) => args.Where(
        (a, i) => !Forms.Contains(a) && (i == 0 || !Forms.Skip(1).Contains(args[i - 1])));
}
