using AxleRisk.Files.Cluster;

namespace AxleRisk.App.Commands.Cluster;

/// <summary>
/// The two batch scripts of a study for Slurm (sbatch(1)): an array of its parts, and the merge. No path stands in a directive: their
/// quoting is Slurm's own, and a percent sign means something there.
/// </summary>
/// <param name="Study">The study.</param>
/// <param name="Program">The program and what stands before its arguments.</param>
/// <param name="Threads">Threads of a part and of the merge.</param>
/// <param name="Directives">Further directives, as <c>--time=1:00:00</c>.</param>
internal sealed record SlurmScripts(SharedStudy Study, IReadOnlyList<string> Program, int Threads, IReadOnlyList<string> Directives)
{
    /// <summary>The names of the scripts in the folder.</summary>
    public const string PartsName = "parts.sbatch", MergeName = "merge.sbatch";

    /// <summary>What the merge writes.</summary>
    public const string AnswerText = "answer.txt", AnswerTable = "answer.csv";

    /// <summary>The array of the parts.</summary>
    public string Parts() => Script(
        "parts", $"#SBATCH --array=1-{Study.Parts}\n", "exec ", $"part \"$folder\" --threads {Threads}",
        "> \"$folder/log/part-$SLURM_ARRAY_TASK_ID.txt\" 2>&1");

    /// <summary>The merge; the answer is written beside and renamed, so that none is ever half.</summary>
    public string Merge() => Script(
        "merge", "", "", $"merge \"$folder\" --threads {Threads} --csv \"$folder/{AnswerTable}\"",
        $"> \"$folder/log/{AnswerText}\" 2> \"$folder/log/merge.txt\" \\\n    && mv \"$folder/log/{AnswerText}\" \"$folder/{AnswerText}\"");

    private string Script(string what, string array, string before, string arguments, string to) =>
        $"""
        #!/bin/bash
        #SBATCH --job-name={Product.Name}-{Study.Study}-{what}
        {array}#SBATCH --ntasks=1
        #SBATCH --cpus-per-task={Threads}
        #SBATCH --output=/dev/null
        {string.Concat(Directives.Select(d => $"#SBATCH {d}\n"))}folder={Shell.Quote(Study.Folder)}
        {before}{string.Join(' ', Program.Select(Shell.Quote))} cluster {arguments} {to}

        """.ReplaceLineEndings("\n");
}
