namespace AxleRisk.Files;

/// <summary>
/// Writes a file whole or not at all: beside its place first, then renamed. Links are followed, and the mode of a file that is
/// there stays. What is no file (a pipe, a device, an open descriptor of this process) is written into.
/// </summary>
public static class WholeFile
{
    // As much as most files written here: a disk with less room left is told before the work, not after it.
    private const int TestBytes = 1 << 16;

    private const int MostLinks = 40;

    /// <summary>Writes what a path names.</summary>
    /// <exception cref="IOException">It cannot be written, for the reason in the message; a file is then as it was.</exception>
    public static void Write(string path, byte[] content)
    {
        try
        {
            string final = Follow(path);
            if (OpenStream(final) is { } stream)
            {
                using (stream)
                {
                    stream.Write(content);
                }

                return;
            }

            WriteBeside(final, content, beside => File.Move(beside, final, overwrite: true));
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            throw new IOException(FileBytes.WriteReason(e), e);
        }
    }

    /// <summary>Finds out whether a path could be written now, and leaves everything as it was.</summary>
    /// <exception cref="IOException">It could not, for the reason in the message.</exception>
    public static void Test(string path)
    {
        try
        {
            string final = Follow(path);
            if (Directory.Exists(final))
            {
                throw new IOException("it is a folder, not a file");
            }

            if (!IsStream(final))
            {
                WriteBeside(final, new byte[TestBytes], _ => { });
            }
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            throw new IOException(FileBytes.WriteReason(e), e);
        }
    }

    private static void WriteBeside(string path, byte[] content, Action<string> then)
    {
        string beside = Beside.PathOf(path);
        Beside.RemoveDead(path);
        try
        {
            using (FileStream stream = File.Create(beside))
            {
                if (!OperatingSystem.IsWindows() && File.Exists(path))
                {
                    File.SetUnixFileMode(stream.SafeFileHandle, File.GetUnixFileMode(path));
                }

                stream.Write(content);
                stream.Flush(flushToDisk: true);
            }

            then(beside);
        }
        finally
        {
            File.Delete(beside);
        }
    }

    /// <summary>The path at the end of a chain of links, whether or not there is anything; a descriptor's is not followed.</summary>
    internal static string Follow(string path)
    {
        string full = Path.GetFullPath(path);
        for (int links = 0; DescriptorOf(full) is null && new FileInfo(full).LinkTarget is string next; links++)
        {
            if (links == MostLinks)
            {
                throw new IOException("its links lead in a circle");
            }

            full = Path.GetFullPath(next, Path.GetDirectoryName(full)!);
        }

        return full;
    }

    private static bool IsStream(string path) => DescriptorOf(path) is not null || FileKind.IsStream(path);

    private static Stream? OpenStream(string path) => DescriptorOf(path) switch
    {
        // A file behind them is not to be written over from its start, beside what else is printed.
        "1" => Console.OpenStandardOutput(),
        "2" => Console.OpenStandardError(),
        _ => IsStream(path) ? new FileStream(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite) : null,
    };

    private static string? DescriptorOf(string path) =>
        OperatingSystem.IsWindows() ? null
        : path.StartsWith("/dev/fd/", StringComparison.Ordinal) ? path["/dev/fd/".Length..]
        : path.StartsWith("/proc/self/fd/", StringComparison.Ordinal) ? path["/proc/self/fd/".Length..]
        : null;
}
