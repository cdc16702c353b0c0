using System.Globalization;
using System.Text;

namespace AxleRisk.Files.Writing;

/// <summary>
/// The file <c>NAME.open</c> beside a scenario that is open for changes: it names the process, so that a second one does not
/// change the scenario too. Beside it and not in a folder of the user's, so that others who share the folder see it. A mark whose
/// process has ended is none. Where the folder cannot be written there is no mark, and nothing to save either.
/// </summary>
public sealed class OpenMark
{
    /// <summary>The end of its name.</summary>
    public const string Suffix = ".open";

    private static readonly Holder Own = new(
        Environment.ProcessId, Processes.StartOf(Environment.ProcessId) ?? "", Environment.MachineName, Processes.Place);

    private readonly string path;

    /// <summary>The mark of a scenario; links are followed, so that all names of a file have one.</summary>
    public OpenMark(string scenario)
    {
        try
        {
            path = WholeFile.Follow(scenario) + Suffix;
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            path = scenario + Suffix;
        }
    }

    /// <summary>Sets the mark, or keeps it where this process has set it.</summary>
    /// <param name="evenIfHeld">Whether to take it from another process, which is then only to look.</param>
    /// <returns>The other process that has the scenario open; null where there is none.</returns>
    public Holder? Take(bool evenIfHeld = false)
    {
        try
        {
            // What is found dead may have been replaced before it is removed; then look again.
            for (int tries = 0; tries < 3; tries++)
            {
                Holder? found = Read();
                if (found == Own)
                {
                    return null;
                }

                if (found is { IsAlive: true } && !evenIfHeld)
                {
                    return found;
                }

                File.Delete(path);
                if (Create())
                {
                    return null;
                }
            }
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            // No mark can be set here.
        }

        return null;
    }

    /// <summary>Removes the mark if it is this process's.</summary>
    public void Release()
    {
        try
        {
            if (Read() == Own)
            {
                File.Delete(path);
            }
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            // The process will be dead; the mark is none then.
        }
    }

    /// <summary>Sets it whole or not at all, and only where there is none.</summary>
    private bool Create()
    {
        string beside = Beside.PathOf(path);
        try
        {
            File.WriteAllText(beside, Own.Write());
            File.Move(beside, path, overwrite: false);
            return true;
        }
        catch (IOException) when (File.Exists(path))
        {
            return false;
        }
        finally
        {
            File.Delete(beside);
        }
    }

    private Holder? Read()
    {
        try
        {
            return Holder.Parse(Encoding.UTF8.GetString(FileBytes.Read(path)));
        }
        catch (FileNotFoundException)
        {
            return null;
        }
    }

    /// <summary>A process that has a scenario open.</summary>
    /// <param name="Process">Its number.</param>
    /// <param name="Start">When it began, as its system counts.</param>
    /// <param name="Host">The name of its machine.</param>
    /// <param name="Place">The start and container of that machine.</param>
    public sealed record Holder(int Process, string Start, string Host, string Place)
    {
        /// <summary>Whether it runs here, so that it is known to be alive.</summary>
        public bool IsHere => Place == Processes.Place;

        /// <summary>Whether it lives, for all that is known: of one elsewhere nothing is.</summary>
        public bool IsAlive => !IsHere || Processes.StartOf(Process) == Start;

        /// <inheritdoc/>
        public override string ToString() => IsHere ? $"process {Process}" : $"process {Process} on {Host}";

        internal string Write() =>
            $"# This scenario is open in a console; the file goes when that is left.\nprocess {Process}\nstart {Start}\nhost {Host}\nplace {Place}\n";

        internal static Holder? Parse(string text)
        {
            Dictionary<string, string> values = [];
            foreach (string[] words in text.Split('\n').Select(l => l.Split(' ', 2)).Where(w => w.Length == 2))
            {
                values[words[0]] = words[1].Trim();
            }

            return int.TryParse(values.GetValueOrDefault("process"), NumberStyles.None, CultureInfo.InvariantCulture, out int process)
                && values.TryGetValue("start", out string? start) && values.TryGetValue("host", out string? host)
                && values.TryGetValue("place", out string? place)
                ? new Holder(process, start, host, place) : null;
        }
    }
}
