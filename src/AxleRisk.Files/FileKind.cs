using System.Runtime.InteropServices;
using System.Text;

namespace AxleRisk.Files;

/// <summary>Tells files from what only looks like one. The class library has no call for this in .NET 10.</summary>
internal static class FileKind
{
    // linux/stat.h: stx_mode stands at byte 28 of the 256 of struct statx on every processor; S_IFMT and its values.
    private const int StatBytes = 256;
    private const int ModeAt = 28;
    private const int KindBits = 0xF000;
    private const int Regular = 0x8000;
    private const int Folder = 0x4000;
    private const int CurrentFolder = -100;
    private const uint MaskKind = 1;

    /// <summary>Whether a path, links followed, names a pipe, a device or a socket; false where there is nothing.</summary>
    public static bool IsStream(string path)
    {
        if (!OperatingSystem.IsLinux())
        {
            return !OperatingSystem.IsWindows() && path.StartsWith("/dev/", StringComparison.Ordinal) && File.Exists(path);
        }

        byte[] stat = new byte[StatBytes];
        return StatX(CurrentFolder, Encoding.UTF8.GetBytes(path + '\0'), 0, MaskKind, stat) == 0
            && (BitConverter.ToUInt16(stat, ModeAt) & KindBits) is not (Regular or Folder);
    }

    /// <summary>
    /// Whether a file is there and marked as not to be written: no one may, by its mode. An administrator's process may write
    /// it all the same, so trying is no answer.
    /// </summary>
    public static bool IsProtected(string path)
    {
        const UnixFileMode anyWrite = UnixFileMode.UserWrite | UnixFileMode.GroupWrite | UnixFileMode.OtherWrite;
        try
        {
            return File.Exists(path) && (OperatingSystem.IsWindows()
                ? File.GetAttributes(path).HasFlag(FileAttributes.ReadOnly)
                : (File.GetUnixFileMode(path) & anyWrite) == 0);
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            return false;
        }
    }

    [DllImport("libc", EntryPoint = "statx")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int StatX(int folder, byte[] path, int flags, uint mask, byte[] buffer);
}
