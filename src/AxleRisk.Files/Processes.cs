using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace AxleRisk.Files;

/// <summary>Tells a living process from a dead one whose number another has taken since.</summary>
internal static class Processes
{
    // proc(5): the fields of /proc/PID/stat behind the name in brackets begin with the 3rd; starttime is the 22nd.
    private const int StartField = 22 - 3;

    /// <summary>
    /// Stands for this start of this machine and this container of it, so that a process of another machine in a shared folder is
    /// never taken for one of here.
    /// </summary>
    public static string Place { get; } = PlaceOf();

    /// <summary>When a process of this place began, as a text to be compared; null where there is no such process.</summary>
    public static string? StartOf(int process)
    {
        try
        {
            // In ticks since the machine's start: the clock may be set meanwhile.
            return OperatingSystem.IsLinux()
                ? AfterName(File.ReadAllText($"/proc/{process}/stat")).Split(' ')[StartField]
                : StartTime(process);
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e) || e is InvalidOperationException or IndexOutOfRangeException)
        {
            return null;
        }
    }

    private static string AfterName(string stat) => stat[(stat.LastIndexOf(')') + 2)..];

    private static string StartTime(int process)
    {
        using var found = Process.GetProcessById(process);
        return found.StartTime.ToUniversalTime().Ticks.ToString(CultureInfo.InvariantCulture);
    }

    // Linux: the numbers of processes are those of one boot and one PID namespace.
    private static string PlaceOf()
    {
        string place = Environment.MachineName;
        try
        {
            place += File.ReadAllText("/proc/sys/kernel/random/boot_id") + new FileInfo("/proc/self/ns/pid").LinkTarget;
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            // Not Linux: the name of the machine has to do.
        }

        return Sha256.HexOf(Encoding.UTF8.GetBytes(place))[..8];
    }
}
