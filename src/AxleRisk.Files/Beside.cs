namespace AxleRisk.Files;

/// <summary>
/// Where a file or folder is written before it is renamed: <c>NAME.PID.PLACE.part</c>. PLACE stands for this start of this
/// machine (and this container of it), so that another machine's process in a shared folder is never taken for a dead one here.
/// </summary>
internal static class Beside
{
    private const string Suffix = ".part";

    /// <summary>The path beside another, of this process alone.</summary>
    public static string PathOf(string path) => $"{path}.{Environment.ProcessId}.{Processes.Place}{Suffix}";

    /// <summary>Removes what processes of this place left beside a path when they were killed.</summary>
    public static void RemoveDead(string path)
    {
        (string start, string end) = (Path.GetFileName(path) + ".", $".{Processes.Place}{Suffix}");
        try
        {
            foreach (string entry in Directory.GetFileSystemEntries(Path.GetDirectoryName(path)!))
            {
                string name = Path.GetFileName(entry);
                if (name.Length > start.Length + end.Length && name.StartsWith(start, StringComparison.Ordinal)
                    && name.EndsWith(end, StringComparison.Ordinal)
                    && int.TryParse(name.AsSpan()[start.Length..^end.Length], out int process) && Processes.StartOf(process) is null)
                {
                    Remove(entry);
                }
            }
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            // It stays where it is; whether the folder can be written is found out by writing.
        }
    }

    private static void Remove(string entry)
    {
        if (Directory.Exists(entry))
        {
            Directory.Delete(entry, recursive: true);
        }
        else
        {
            File.Delete(entry);
        }
    }
}
