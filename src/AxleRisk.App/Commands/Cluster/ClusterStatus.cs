using AxleRisk.App.Text;
using AxleRisk.Files.Cluster;

namespace AxleRisk.App.Commands.Cluster;

/// <summary>How far the parts of a study have come, in words.</summary>
internal static class ClusterStatus
{
    /// <summary>The parts that are neither done nor at work.</summary>
    public static int[] Missing(IEnumerable<PartState> states) =>
        [.. states.Where(s => s.Stage is not (PartStage.Done or PartStage.Running)).Select(s => s.Part)];

    /// <summary>The lines: how many are done, every part that is not, and how to go on.</summary>
    public static IEnumerable<string> Lines(SharedStudy study, IReadOnlyList<PartState> states)
    {
        int done = states.Count(s => s.Stage == PartStage.Done);
        yield return $"{study.Study} of {Printable.Line(study.ScenarioName)}: {done} of {study.Parts} parts done";
        foreach (PartState state in states.Where(s => s.Stage != PartStage.Done))
        {
            yield return $"  part {state.Part}: {Printable.Line(Words(state))}";
        }

        int[] missing = Missing(states);
        foreach (string line in missing.Length > 0 ? Again(study, missing)
            : done == study.Parts ? [$"To merge: {Product.Name} cluster merge {Shell.Quote(study.Folder)}"] : [])
        {
            yield return line;
        }
    }

    private static string Words(PartState state) => state.Stage switch
    {
        PartStage.Running => $"at work ({state.Where})",
        PartStage.Silent => $"lost: no sign of life for {state.Silence.TotalSeconds:0} s ({state.Where})",
        PartStage.Damaged => $"damaged: {state.Where} is missing or not as it was written",
        PartStage.Ended => $"ended before it was done ({state.Where})",
        _ => "no word of it: it has not begun",
    };

    private static IEnumerable<string> Again(SharedStudy study, int[] missing)
    {
        string numbers = PartFolder.Numbers(missing);
        bool isSlurm = File.Exists(Path.Combine(study.Folder, SlurmScripts.PartsName));
        string manifest = Path.Combine(study.Folder, KubernetesJobs.PartsName);
        yield return $"To send {(missing.Length == 1 ? "part" : "parts")} {numbers}{(isSlurm ? ", if not in the queue" : "")}:";
        IEnumerable<string> commands = isSlurm ? Sbatch.ByHand(study, numbers)
            : File.Exists(manifest) ? [$"kubectl replace --force -f {Shell.Quote(manifest)}"]
            : missing.Select(part => $"{Product.Name} cluster part {Shell.Quote(study.Folder)} {part}");
        foreach (string command in commands)
        {
            yield return $"  {command}";
        }
    }
}
