using System.Diagnostics;
using System.Text.Json;
using System.Text.Json.Nodes;
using AxleRisk.App.Commands.Cluster;
using AxleRisk.Files.Cluster;
using Json.Schema;
using Xunit;

namespace AxleRisk.App.Tests.Commands.Cluster;

/// <summary>The scripts for Slurm and the manifests for Kubernetes, and what is refused before there are any.</summary>
public sealed class BatchJobTests
{
    private static readonly string Van = Cli.Shipped("warranty-clinic-van");

    private readonly string folder = TemporaryFolder.New();

    [Fact]
    public void The_scripts_say_what_Slurm_is_to_do()
    {
        var scripts = new SlurmScripts(Study("/data/it's 50%"), ["/opt/axle risk/axlerisk"], 2, ["--time=1:00:00", "--exclusive"]);
        Assert.Equal(
            """
            #!/bin/bash
            #SBATCH --job-name=axlerisk-rank-parts
            #SBATCH --array=1-8
            #SBATCH --ntasks=1
            #SBATCH --cpus-per-task=2
            #SBATCH --output=/dev/null
            #SBATCH --time=1:00:00
            #SBATCH --exclusive
            folder='/data/it'\''s 50%'
            exec '/opt/axle risk/axlerisk' cluster part "$folder" --threads 2 > "$folder/log/part-$SLURM_ARRAY_TASK_ID.txt" 2>&1

            """.ReplaceLineEndings("\n"), scripts.Parts());
        Assert.DoesNotContain("--array", scripts.Merge());
        Assert.Contains(
            "\n'/opt/axle risk/axlerisk' cluster merge \"$folder\" --threads 2 --csv \"$folder/answer.csv\" > \"$folder/log/answer.txt\"",
            scripts.Merge());
    }

    // What a shell makes of them, with names that would start another program where they are not quoted.
    [Theory]
    [InlineData("plain")]
    [InlineData("a b  c")]
    [InlineData("it's \"a\" `touch x` $(touch x) ; touch x # \\")]
    [InlineData("a\ntouch x")]
    public void A_shell_hands_the_folder_over_as_it_is_called(string name)
    {
        Assert.SkipUnless(File.Exists("/bin/bash"), "no bash here");
        string study = Directory.CreateDirectory(Path.Combine(folder, name)).FullName, program = Path.Combine(study, "it's me.sh");
        Directory.CreateDirectory(Path.Combine(study, "log"));
        File.WriteAllText(program, "#!/bin/sh\nprintf '%s|' \"$@\"\n");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(program, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        }

        var scripts = new SlurmScripts(Study(study), [program], 1, []);
        Run(scripts.Parts());
        Assert.Equal($"cluster|part|{study}|--threads|1|", File.ReadAllText(Path.Combine(study, "log", "part-3.txt")));
        Run(scripts.Merge());
        Assert.Equal($"cluster|merge|{study}|--threads|1|--csv|{study}/answer.csv|", File.ReadAllText(Path.Combine(study, "answer.txt")));
        Assert.False(File.Exists(Path.Combine(folder, "x")));

        void Run(string script)
        {
            using Process bash = Process.Start(new ProcessStartInfo("/bin/bash", ["-c", script])
            { WorkingDirectory = folder, Environment = { ["SLURM_ARRAY_TASK_ID"] = "3" } })!;
            bash.WaitForExit();
            Assert.Equal(0, bash.ExitCode);
        }
    }

    // Kubernetes' published OpenAPI of batch/v1 (api/openapi-spec/v3/apis__batch__v1_openapi.json): names, types and what is required of
    // the objects used here: of a job written down from its documentation, of pods from memory. A field that it does not know is an error.
    [Fact]
    public void The_manifests_are_jobs_as_Kubernetes_describes_them()
    {
        JsonSchema schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "kubernetes-job.schema.json")));
        var jobs = new KubernetesJobs(Study("/work/van \"1\""), "registry.example/axlerisk:1", "studies", "of 2026/van \"1\"", 4);
        JsonNode parts = JsonNode.Parse(jobs.Parts())!, merge = JsonNode.Parse(jobs.Merge())!;
        Assert.True(IsGood(parts));
        Assert.True(IsGood(merge));
        JsonNode spec = parts["spec"]!, container = spec["template"]!["spec"]!["containers"]![0]!;
        Assert.Equal(("Indexed", 8, 8), ((string?)spec["completionMode"], (int)spec["completions"]!, (int)spec["parallelism"]!));
        Assert.Equal("""["axlerisk","cluster","part","/study","--threads","4"]""", container["command"]!.ToJsonString());
        Assert.Equal("of 2026/van \"1\"", (string?)container["volumeMounts"]![0]!["subPath"]);
        Assert.Null(merge["spec"]!["completionMode"]);
        Assert.NotEqual((string?)parts["metadata"]!["name"], (string?)merge["metadata"]!["name"]);

        // The schema does see what is wrong.
        spec["completionmode"] = "Indexed";
        Assert.False(IsGood(parts));
        merge["spec"]!["template"]!["spec"]!["containers"]![0]!["volumeMounts"]![0]!.AsObject().Remove("mountPath");
        Assert.False(IsGood(merge));

        bool IsGood(JsonNode node) => schema.Evaluate(JsonSerializer.SerializeToElement(node)).IsValid;
    }

    [Fact]
    public void The_kubernetes_command_makes_the_manifests()
    {
        string made = Path.Combine(folder, "made");
        (int exit, string output, string error) = Cli.Run(
            "cluster", "kubernetes", Van, "-n", "5000", "--parts", "3", "--image", "axlerisk:1", "--claim", "studies", "--out", made);
        Assert.Equal((0, ""), (exit, error));
        Assert.Contains("kubectl wait --for=condition=complete", output);
        Assert.Equal("made", (string?)JsonNode.Parse(File.ReadAllText(Path.Combine(made, "parts.json")))!
            ["spec"]!["template"]!["spec"]!["containers"]![0]!["volumeMounts"]![0]!["subPath"]);
        Assert.Contains("kubectl replace --force -f ", Cli.Run("cluster", "status", made).Out);
    }

    [Theory]
    [InlineData("--parts must be a whole number from 1 to 10000, such as 16, not \"0\"", "-n", "5000", "--parts", "0")]
    [InlineData("--parts must be a whole number", "-n", "5000", "--parts", "1.5")]
    [InlineData("--parts", "-n", "5000")]
    [InlineData("--evaluations", "--parts", "2")]
    [InlineData("--evaluations must be a whole number", "-n", "many", "--parts", "2")]
    [InlineData("toss", "-n", "5000", "--parts", "2", "--study", "toss")]
    [InlineData("remedies is run whole; these can be run in parts: risk, rank, fleet, learn, inspect",
        "-n", "5000", "--parts", "2", "--study", "remedies")]
    [InlineData("there are no data", "-n", "65536", "--parts", "2", "--study", "learn")]
    [InlineData("risk cannot be asked so: ", "-n", "5000", "--parts", "2", "--", "--subsets")]
    [InlineData("--until-cov cannot be asked of a study that is run in parts", "-n", "5000", "--parts", "2", "--", "--until-cov", "0.1")]
    [InlineData("--out=x cannot be asked", "-n", "5000", "--parts", "2", "--", "--out=x")]
    [InlineData("@x cannot be asked", "-n", "5000", "--parts", "2", "--", "@x")]
    [InlineData("--sbatch must be one option of sbatch", "-n", "5000", "--parts", "2", "--sbatch=--comment=a b")]
    [InlineData("--sbatch must be one option of sbatch", "-n", "5000", "--parts", "2", "--sbatch=--time=1\n#SBATCH --uid=0")]
    public void What_cannot_be_run_in_parts_is_refused(string expected, params string[] args)
    {
        string made = Path.Combine(folder, "made");
        (int exit, string output, string error) = Cli.Run(["cluster", "slurm", Van, "--out", made, .. args]);
        Assert.Equal((2, ""), (exit, output));
        Assert.Contains(expected, error);
        Assert.False(Directory.Exists(made));
    }

    [Fact]
    public void A_folder_that_is_not_empty_is_not_written_into()
    {
        File.WriteAllText(Path.Combine(folder, "mine.txt"), "mine");
        (int exit, _, string error) = Cli.Run("cluster", "slurm", Van, "-n", "5000", "--parts", "2", "--out", folder);
        Assert.Equal(2, exit);
        Assert.Contains("it is not empty; name another folder with --out", error);
        Assert.Equal([Path.Combine(folder, "mine.txt")], Directory.GetFileSystemEntries(folder));
    }

    [Theory]
    [InlineData("3")]
    [InlineData("0")]
    [InlineData("x")]
    public void A_part_that_there_is_not_is_refused(string part)
    {
        string made = Path.Combine(folder, "made");
        Assert.Equal(0, Cli.Run("cluster", "slurm", Van, "-n", "5000", "--parts", "2", "--out", made).Exit);
        (int exit, _, string error) = Cli.Run("cluster", "part", made, part);
        Assert.Equal((2, $"axlerisk: the part must be a whole number from 1 to 2, not \"{part}\"\n"), (exit, error));
        error = Cli.Run("cluster", "merge", made, "--out", Path.Combine(folder, "x.toml")).Error;
        Assert.Contains("--out is for learn, and this is risk", error);
    }

    private static SharedStudy Study(string path) =>
        new(path, "rank", "0a", "1", 1, 8, false, ["--evaluations", "5000"]) { ScenarioName = "van.toml" };
}
