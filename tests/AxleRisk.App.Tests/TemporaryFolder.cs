namespace AxleRisk.App.Tests;

/// <summary>Folders that tests write into, all in one that is removed when the tests end.</summary>
internal static class TemporaryFolder
{
    private static readonly Lazy<string> Root = new(() =>
    {
        string root = Directory.CreateTempSubdirectory("axlerisk-tests-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(root, recursive: true);
        return root;
    });

    private static int count;

    /// <summary>A new, empty folder.</summary>
    public static string New() => Directory.CreateDirectory(Path.Combine(Root.Value, Interlocked.Increment(ref count).ToString())).FullName;
}
