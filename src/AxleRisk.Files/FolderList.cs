namespace AxleRisk.Files;

/// <summary>The list of what was written to a folder: name, length and digest of every file, so that a change shows.</summary>
internal static class FolderList
{
    /// <summary>The list's own name.</summary>
    public const string Name = "files.csv";

    private static readonly string[] Header = ["file", "bytes", "sha256"];

    /// <summary>Writes the list of all files that a folder holds.</summary>
    public static void Write(string folder) =>
        TableFile.Write(Path.Combine(folder, Name), Header, [.. FilesOf(folder).Select(f => Row(folder, f))]);

    /// <summary>Why a folder cannot be said to hold just what was written to it, in a sentence; null where it does.</summary>
    public static string? Doubt(string folder)
    {
        string list = Path.Combine(folder, Name);
        if (!File.Exists(list))
        {
            return $"it has no {Name}, so it was not made by this program";
        }

        HashSet<string> written = [.. File.ReadLines(list).Skip(1)];
        string[] present = [.. FilesOf(folder).Where(f => f != Name)];
        return present.FirstOrDefault(f => !written.Contains(string.Join(',', Row(folder, f)))) is { } other
            ? $"{other} was added or changed since it was made"
            : null;
    }

    private static IEnumerable<string> FilesOf(string folder) =>
        Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(folder, f).Replace('\\', '/')).Order(StringComparer.Ordinal);

    private static string[] Row(string folder, string file)
    {
        byte[] bytes = File.ReadAllBytes(Path.Combine(folder, file));
        return [file, bytes.Length.ToString(), Sha256.HexOf(bytes)];
    }
}
