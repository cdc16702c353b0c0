namespace AxleRisk.Files;

/// <summary>
/// Writes a folder of files whole or not at all: beside its place first, then renamed. It holds a list of its files
/// (<c>files.csv</c>); a folder already there is replaced only where it holds nothing but what such a list names, unchanged.
/// </summary>
public static class WholeFolder
{
    /// <summary>Makes a folder, where there is none yet.</summary>
    /// <exception cref="IOException">It cannot be made, for the reason in the message.</exception>
    public static void Make(string path)
    {
        if (File.Exists(path))
        {
            throw new IOException("it is a file, not a folder");
        }

        try
        {
            Directory.CreateDirectory(path);
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            throw new IOException(FileBytes.WriteReason(e), e);
        }
    }

    /// <summary>Why a folder may not be written at a path, in a sentence; null where it may.</summary>
    /// <exception cref="IOException">What is there cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">What is there may not be read.</exception>
    public static string? Refusal(string path)
    {
        if (File.Exists(path))
        {
            return "it is a file, not a folder";
        }

        var folder = new DirectoryInfo(path);
        return !folder.Exists ? null
            : folder.LinkTarget is not null ? "it is a link"
            : !folder.EnumerateFileSystemInfos().Any() ? null
            : FolderList.Doubt(path);
    }

    /// <summary>Writes the files; a name may have folders in it, with <c>/</c> between.</summary>
    /// <param name="path">The folder.</param>
    /// <param name="files">The files.</param>
    /// <param name="check">Looks over the whole folder before it gets its name; what it throws leaves nothing written.</param>
    /// <exception cref="IOException">It cannot be written, or is refused (<see cref="Refusal"/>).</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static void Write(string path, IEnumerable<(string Name, Action<Stream> Write)> files, Action<string>? check = null)
    {
        path = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        string beside = Beside.PathOf(path);
        Beside.RemoveDead(path);
        try
        {
            foreach ((string name, Action<Stream> write) in files)
            {
                string file = Path.Combine(beside, name);
                Directory.CreateDirectory(Path.GetDirectoryName(file)!);
                using FileStream stream = File.Create(file);
                write(stream);
            }

            check?.Invoke(beside);
            FolderList.Write(beside);
            Replace(path, beside);
        }
        finally
        {
            if (Directory.Exists(beside))
            {
                Directory.Delete(beside, recursive: true);
            }
        }
    }

    private static void Replace(string path, string beside)
    {
        if (Refusal(path) is { } refusal)
        {
            throw new IOException(refusal);
        }

        if (!Directory.Exists(path))
        {
            Directory.Move(beside, path);
            return;
        }

        string old = $"{path}.{Environment.ProcessId}.old";
        Directory.Move(path, old);
        try
        {
            Directory.Move(beside, path);
        }
        catch
        {
            Directory.Move(old, path);
            throw;
        }

        Directory.Delete(old, recursive: true);
    }
}
