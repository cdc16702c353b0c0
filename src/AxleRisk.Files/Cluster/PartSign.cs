using System.Globalization;

namespace AxleRisk.Files.Cluster;

/// <summary>
/// Signs of life in a folder that machines share: files whose time is renewed while their process lives. A process that was killed
/// leaves them, and they grow old.
/// </summary>
internal sealed class PartSign : IDisposable
{
    // EEXIST, and ERROR_FILE_EXISTS.
    private const int Exists = 17, ExistsOnWindows = unchecked((int)0x80070050);

    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(3);
    private readonly HashSet<string> held = [];
    private readonly Lock holding = new();
    private readonly Timer timer;

    public PartSign() => timer = new Timer(_ => Renew(), null, Beat, Beat);

    /// <summary>What a sign says of who gives it.</summary>
    public static string Here => $"{Environment.MachineName} process {Environment.ProcessId.ToString(CultureInfo.InvariantCulture)}";

    /// <summary>Gives a sign, whoever gave it before.</summary>
    public void Give(string path)
    {
        File.WriteAllText(path, Here);
        Hold(path);
    }

    /// <summary>Gives a sign where nobody alive gives it.</summary>
    /// <returns>Whether it is given from here now.</returns>
    public bool TryGive(string path, TimeSpan patience)
    {
        try
        {
            using (var stream = new StreamWriter(new FileStream(path, FileMode.CreateNew, FileAccess.Write)))
            {
                stream.Write(Here);
            }
        }
        catch (IOException e) when (e.HResult is Exists or ExistsOnWindows)
        {
            // Without an age it has just been ended.
            if (AgeOf(path) is not { } age || age < patience)
            {
                return false;
            }

            File.WriteAllText(path, Here);
        }

        Hold(path);
        return true;
    }

    /// <summary>Ends a sign.</summary>
    public void End(string path)
    {
        lock (holding)
        {
            held.Remove(path);
        }

        File.Delete(path);
    }

    /// <summary>How long ago a sign was given last; null where there is none.</summary>
    public static TimeSpan? AgeOf(string path) =>
        File.Exists(path) ? TimeProvider.System.GetUtcNow() - new FileInfo(path).LastWriteTimeUtc : null;

    public void Dispose()
    {
        timer.Dispose();
        string[] left;
        lock (holding)
        {
            left = [.. held];
            held.Clear();
        }

        Array.ForEach(left, File.Delete);
    }

    private void Hold(string path)
    {
        lock (holding)
        {
            held.Add(path);
        }
    }

    private void Renew()
    {
        lock (holding)
        {
            foreach (string path in held)
            {
                try
                {
                    File.SetLastWriteTimeUtc(path, TimeProvider.System.GetUtcNow().UtcDateTime);
                }
                catch (Exception e) when (FileBytes.IsFileTrouble(e))
                {
                    // Another took it for dead, or the folder is out of reach for a while: the next time may be luckier.
                }
            }
        }
    }
}
