using System.Collections.Immutable;
using System.Globalization;

namespace AxleRisk.Files.Cluster;

/// <summary>How far a part has come.</summary>
public enum PartStage
{
    /// <summary>It has done all it had to do.</summary>
    Done,

    /// <summary>It is at work, or waits for others.</summary>
    Running,

    /// <summary>It has begun, and gives no sign of life.</summary>
    Silent,

    /// <summary>A file that it has given is missing, or not as it was written.</summary>
    Damaged,

    /// <summary>It was ended before it was done: by a signal, or by trouble that its log tells.</summary>
    Ended,

    /// <summary>There is no word of it: it has not begun.</summary>
    None,
}

/// <summary>How far a part has come.</summary>
/// <param name="Part">Its number.</param>
/// <param name="Stage">How far.</param>
/// <param name="Where">The machine and process that gave the last sign of life, or the file at fault; empty for nothing.</param>
/// <param name="Silence">How long ago it gave a sign of life; zero where that does not matter.</param>
public sealed record PartState(int Part, PartStage Stage, string Where, TimeSpan Silence);

/// <summary>The files of the parts of a study.</summary>
public static class PartFolder
{
    /// <summary>How far every part has come.</summary>
    /// <param name="study">The study.</param>
    /// <param name="patience">A part without a sign of life for so long is taken for dead.</param>
    /// <exception cref="IOException">The folder cannot be read.</exception>
    public static ImmutableArray<PartState> StatesOf(SharedStudy study, TimeSpan patience) =>
        [.. Enumerable.Range(1, study.Parts).Select(part => StateOf(study, part, patience))];

    /// <summary>Numbers of parts as a batch system takes them: with commas between, and runs as ranges.</summary>
    public static string Numbers(IReadOnlyList<int> parts)
    {
        List<string> runs = [];
        for (int i = 0, first = 0; i < parts.Count; i++)
        {
            if (i + 1 == parts.Count || parts[i + 1] != parts[i] + 1)
            {
                runs.Add(first == i ? $"{parts[i]}" : $"{parts[first]}-{parts[i]}");
                first = i + 1;
            }
        }

        return string.Join(',', runs);
    }

    internal static string Alive(SharedStudy study, int part) => Named(study, part, "alive");

    internal static string Ended(SharedStudy study, int part) => Named(study, part, "ended");

    internal static string Done(SharedStudy study, int part) => Named(study, part, "done");

    internal static string PathOf(SharedStudy study, int part, int pass) => Named(study, part, $"pass{pass:000}");

    internal static string Begun(SharedStudy study, int part, int pass) => Named(study, part, $"pass{pass:000}.begun");

    internal static bool IsThere(SharedStudy study, int part, int pass) => File.Exists(PathOf(study, part, pass));

    /// <summary>The passes of a part that is done; null where it is not.</summary>
    internal static int? PassesOf(SharedStudy study, int part) =>
        int.TryParse(TextOf(Done(study, part)), CultureInfo.InvariantCulture, out int passes) ? passes : null;

    internal static void Write(SharedStudy study, int part, int pass, IReadOnlyList<double[]> rows) =>
        PassFile.Write(PathOf(study, part, pass), Whose(study, part, pass), rows);

    /// <summary>A share; null where it is not there, or not as it was written.</summary>
    internal static double[][]? Read(SharedStudy study, int part, int pass) =>
        IsThere(study, part, pass) ? PassFile.Read(PathOf(study, part, pass), Whose(study, part, pass)) : null;

    private static PartState StateOf(SharedStudy study, int part, TimeSpan patience)
    {
        string alive = Alive(study, part);
        TimeSpan? silence = PartSign.AgeOf(alive);
        string where = silence is null ? TextOf(Ended(study, part)) : TextOf(alive);
        int? passes = PassesOf(study, part);
        int[] bad = [.. Enumerable.Range(1, passes ?? 0).Where(pass => Read(study, part, pass) is null)];
        return silence < patience ? new(part, PartStage.Running, where, default)
            : bad.Length > 0 ? new(part, PartStage.Damaged, PathOf(study, part, bad[0]), default)
            : passes is not null ? new(part, PartStage.Done, "", default)
            : silence is { } since ? new(part, PartStage.Silent, where, since)
            : where.Length > 0 ? new(part, PartStage.Ended, where, default)
            : new(part, PartStage.None, "", default);
    }

    // A sign may end while it is read.
    private static string TextOf(string path)
    {
        try
        {
            return File.Exists(path) ? File.ReadAllText(path) : "";
        }
        catch (FileNotFoundException)
        {
            return "";
        }
    }

    private static string Named(SharedStudy study, int part, string what) =>
        Path.Combine(study.PartsFolder, $"{part.ToString(CultureInfo.InvariantCulture)}.{what}");

    private static string Whose(SharedStudy study, int part, int pass) => $"axlerisk {study.Id} part {part} pass {pass}";
}
