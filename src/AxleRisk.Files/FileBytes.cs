using System.Security;

namespace AxleRisk.Files;

/// <summary>Reads whole files of a sensible size, and says in a few words why a file cannot be read or written.</summary>
internal static class FileBytes
{
    /// <summary>The largest scenario read, in bytes.</summary>
    public const int Largest = 4 << 20;

    private const int Step = 1 << 16;

    /// <summary>The bytes of a file.</summary>
    /// <exception cref="IOException">The file cannot be read, or is over <paramref name="largest"/> bytes.</exception>
    public static byte[] Read(string path, int largest = Largest)
    {
        try
        {
            using FileStream stream = File.OpenRead(path);
            return Read(stream, largest);
        }
        catch (UnauthorizedAccessException)
        {
            throw new IOException(Directory.Exists(path) ? "it is a folder, not a file" : "it may not be read: permission is denied");
        }
        catch (FileNotFoundException) when (path.Contains('\uFFFD'))
        {
            throw new IOException("its name is not valid UTF-8: rename the file");
        }
    }

    public static string TooLarge(int largest = Largest) => $"the file is over {largest >> 20} MB";

    /// <summary>Whether an exception says that a file cannot be read or written, not that the program is wrong.</summary>
    public static bool IsFileTrouble(Exception e) =>
        e is IOException or UnauthorizedAccessException or SecurityException or ArgumentException or NotSupportedException;

    /// <summary>Why a file cannot be read, in one line.</summary>
    public static string Reason(Exception e) => e switch
    {
        FileNotFoundException or DirectoryNotFoundException => "there is no such file",
        ArgumentException => "this is no name that a file can have",
        _ => WithoutPath(e.Message),
    };

    /// <summary>Why a file cannot be written, in one line.</summary>
    public static string WriteReason(Exception e) => e switch
    {
        DirectoryNotFoundException => "there is no such folder",
        UnauthorizedAccessException => "the file or its folder may not be written",
        ArgumentException => "this is no name that a file can have",
        _ => WithoutPath(e.Message),
    };

    private static byte[] Read(Stream stream, int largest)
    {
        // The length of a device or a pipe is not known beforehand, so reading stops by itself.
        using var bytes = new MemoryStream();
        byte[] buffer = new byte[Step];
        while (stream.Read(buffer) is var length and > 0)
        {
            bytes.Write(buffer, 0, length);
            if (bytes.Length > largest)
            {
                throw new IOException(TooLarge(largest));
            }
        }

        return bytes.ToArray();
    }

    // The system's messages end with the path, here often that of a file beside the one meant.
    private static string WithoutPath(string message)
    {
        int path = message.IndexOf(" : '", StringComparison.Ordinal);
        return (path > 0 ? message[..path] : message).ReplaceLineEndings(" ").TrimEnd('.');
    }
}
