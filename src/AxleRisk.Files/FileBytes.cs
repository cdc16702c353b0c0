using System.Security;

namespace AxleRisk.Files;

/// <summary>Reads whole files of a sensible size.</summary>
internal static class FileBytes
{
    /// <summary>The largest file read, in bytes.</summary>
    public const int Largest = 4 << 20;

    /// <summary>The bytes of a file.</summary>
    /// <exception cref="IOException">The file cannot be read, or is over <see cref="Largest"/>.</exception>
    public static byte[] Read(string path)
    {
        using FileStream stream = File.OpenRead(path);

        // The length of a device or a pipe is not known beforehand, so reading stops by itself.
        byte[] buffer = new byte[Largest + 1];
        int length = stream.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
        return length <= Largest ? buffer[..length] : throw new IOException(TooLarge);
    }

    public static string TooLarge => $"the file is over {Largest >> 20} MB";

    /// <summary>Whether an exception says that a file cannot be read, not that the program is wrong.</summary>
    public static bool IsFileTrouble(Exception e) =>
        e is IOException or UnauthorizedAccessException or SecurityException or ArgumentException or NotSupportedException;

    /// <summary>Why a file cannot be read, in one line.</summary>
    public static string Reason(Exception e) => e switch
    {
        FileNotFoundException or DirectoryNotFoundException => "there is no such file",
        UnauthorizedAccessException => "it is a folder or may not be read",
        _ => e.Message.ReplaceLineEndings(" "),
    };
}
