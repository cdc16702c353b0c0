namespace AxleRisk.Files.Distributions;

/// <summary>
/// Where the data files of a scenario may lie: in its folder or below, links resolved, and in folders that the user allowed. A
/// scenario from somebody else must not read whatever file it names.
/// </summary>
/// <param name="scenario">The scenario's path.</param>
/// <param name="allowed">Further folders.</param>
internal sealed class DataFolder(string scenario, IReadOnlyList<string> allowed)
{
    /// <summary>The largest data file, in bytes: a million values of any length that a number has.</summary>
    public const int Largest = 64 << 20;

    private const string Elsewhere = "elsewhere";

    private const int MostLinks = 40;

    private readonly string home = Path.GetDirectoryName(Path.GetFullPath(scenario)) ?? Path.GetPathRoot(Path.GetFullPath(scenario))!;

    /// <summary>The bytes of a file named as in the scenario.</summary>
    /// <exception cref="IOException">It cannot be read, or lies elsewhere.</exception>
    public byte[] Read(string name)
    {
        string copy = Path.Combine(home, PlaceInCopy(name));
        string path = RealPath(File.Exists(copy) ? copy : Path.Combine(home, name));
        return allowed.Prepend(home).Any(folder => IsBelow(path, RealPath(Path.GetFullPath(folder))))
            ? FileBytes.Read(path, Largest)
            : throw new IOException("it lies outside the scenario's folder: move it there, or allow its folder with --data-folder DIR");
    }

    /// <summary>
    /// Where a copy of a scenario keeps a data file, from its own folder: as it is named there where that is in the folder or below,
    /// and else in <c>elsewhere</c>, where it is looked for first. So a copy with its data can be read on any machine, and its text
    /// stays as it was.
    /// </summary>
    /// <param name="name">The file as the scenario names it.</param>
    public static string PlaceInCopy(string name)
    {
        List<string> inner = [];
        int up = 0;
        char[] separators = [Path.DirectorySeparatorChar, Path.AltDirectorySeparatorChar];
        foreach (string part in name.Split(separators, StringSplitOptions.RemoveEmptyEntries))
        {
            switch (part)
            {
                case ".":
                    break;
                case ".." when inner.Count > 0:
                    inner.RemoveAt(inner.Count - 1);
                    break;
                case "..":
                    up++;
                    break;
                default:
                    inner.Add(part.Replace(Path.VolumeSeparatorChar, '_'));
                    break;
            }
        }

        string place = string.Join('/', inner);
        return Path.IsPathRooted(name) ? $"{Elsewhere}/root/{place}" : up > 0 ? $"{Elsewhere}/up-{up}/{place}" : place;
    }

    private static bool IsBelow(string path, string folder) =>
        path.StartsWith(Path.TrimEndingDirectorySeparator(folder) + Path.DirectorySeparatorChar, StringComparison.Ordinal)
        || folder == Path.GetPathRoot(folder);

    /// <summary>The path with every link in it followed; what is not there is taken as it is written.</summary>
    private static string RealPath(string path)
    {
        string full = Path.GetFullPath(path);
        string real = Path.GetPathRoot(full)!;
        var left = new Stack<string>(Parts(full, real).Reverse());
        for (int links = 0; left.TryPop(out string? part);)
        {
            string next = Path.Combine(real, part);
            if (new FileInfo(next).LinkTarget is not string target)
            {
                real = next;
                continue;
            }

            if (++links > MostLinks)
            {
                throw new IOException("its links lead in a circle");
            }

            // From the root again: a link's target may lead through links.
            string to = Path.GetFullPath(target, real);
            real = Path.GetPathRoot(to)!;
            foreach (string again in Parts(to, real).Reverse())
            {
                left.Push(again);
            }
        }

        return real;
    }

    private static string[] Parts(string path, string root) =>
        path[root.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries);
}
