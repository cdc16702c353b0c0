using System.ComponentModel;
using System.Diagnostics;
using System.Text.RegularExpressions;
using AxleRisk.Core.Studies;
using AxleRisk.Files.Cluster;

namespace AxleRisk.App.Commands.Cluster;

/// <summary>Sends jobs to Slurm.</summary>
internal static partial class Sbatch
{
    /// <summary>Sends parts and, after them, the merge.</summary>
    /// <param name="study">The study; its scripts are in its folder.</param>
    /// <param name="parts">Which parts, as Slurm writes them; null for all.</param>
    /// <returns>The numbers of the two jobs.</returns>
    /// <exception cref="StudyException">Slurm is not here, or has refused.</exception>
    public static (string Parts, string Merge) Send(SharedStudy study, string? parts)
    {
        string sent = Run([.. parts is null ? [] : new[] { $"--array={parts}" }, Path.Combine(study.Folder, SlurmScripts.PartsName)]);
        return (sent, Run(
            [$"--dependency=afterok:{sent}", "--kill-on-invalid-dep=yes", Path.Combine(study.Folder, SlurmScripts.MergeName)]));
    }

    /// <summary>The commands that do the same by hand.</summary>
    public static IEnumerable<string> ByHand(SharedStudy study, string? parts)
    {
        string Script(string name) => Shell.Quote(Path.Combine(study.Folder, name));
        return
        [
            $"parts=$(sbatch --parsable {(parts is null ? "" : $"--array={parts} ")}{Script(SlurmScripts.PartsName)})",
            $"sbatch --dependency=afterok:$parts {Script(SlurmScripts.MergeName)}",
        ];
    }

    private static string Run(IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo("sbatch") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add("--parsable");
        foreach (string argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        try
        {
            using Process process = Process.Start(start)!;
            Task<string> error = process.StandardError.ReadToEndAsync();
            string output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0 && Number().Match(output) is { Success: true } number ? number.Value
                : throw new StudyException($"sbatch has not taken the job: {error.Result.Trim().ReplaceLineEndings(" ")}");
        }
        catch (Win32Exception e)
        {
            throw new StudyException($"cannot start sbatch: {e.Message}; send the scripts from a machine that has Slurm");
        }
    }

    // --parsable: the number of the job, and behind a semicolon the cluster where there are several.
    [GeneratedRegex(@"^\d+")]
    private static partial Regex Number();
}
