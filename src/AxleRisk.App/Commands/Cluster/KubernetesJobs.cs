using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using AxleRisk.Files.Cluster;

namespace AxleRisk.App.Commands.Cluster;

/// <summary>The two jobs of a study for Kubernetes (batch/v1): an indexed job of its parts, and the merge; JSON is YAML.</summary>
/// <param name="Study">The study.</param>
/// <param name="Image">The image, which has the program.</param>
/// <param name="Claim">The claim of the volume that holds the study's folder.</param>
/// <param name="Place">The folder's place in that volume.</param>
/// <param name="Threads">Threads, and so processors, of a part and of the merge.</param>
internal sealed record KubernetesJobs(SharedStudy Study, string Image, string Claim, string Place, int Threads)
{
    /// <summary>The names of the manifests in the folder.</summary>
    public const string PartsName = "parts.json", MergeName = "merge.json";

    private const string Mount = "/study";

    /// <summary>The name of a job.</summary>
    public string NameOf(string what) => $"{Product.Name}-{Study.Study}-{Study.Id[..8]}-{what}";

    /// <summary>The parts: a pod finds its number in JOB_COMPLETION_INDEX.</summary>
    public string Parts() => Job("parts", ["part", Mount], new JsonObject
    {
        ["completionMode"] = "Indexed",
        ["completions"] = Study.Parts,
        ["parallelism"] = Study.Parts,
        // Twice for each, where nodes are taken away: the job starts again what has failed, and a part done ends at once.
        ["backoffLimit"] = 2 * Study.Parts,
    });

    /// <summary>The merge, to be applied when the parts are complete; its answer is its log.</summary>
    public string Merge() => Job("merge", ["merge", Mount, "--csv", $"{Mount}/{SlurmScripts.AnswerTable}"], new JsonObject
    {
        ["backoffLimit"] = 2,
    });

    private string Job(string what, IEnumerable<string> arguments, JsonObject spec)
    {
        string processors = Threads.ToString();
        spec["template"] = new JsonObject
        {
            ["spec"] = new JsonObject
            {
                ["restartPolicy"] = "Never",
                ["containers"] = new JsonArray(new JsonObject
                {
                    ["name"] = what,
                    ["image"] = Image,
                    ["command"] = new JsonArray([.. new[] { Product.Name, "cluster" }.Concat(arguments)
                        .Concat(["--threads", processors]).Select(a => (JsonNode)a)]),
                    ["resources"] = new JsonObject { ["requests"] = new JsonObject { ["cpu"] = processors } },
                    ["volumeMounts"] = new JsonArray(new JsonObject { ["name"] = "study", ["mountPath"] = Mount, ["subPath"] = Place }),
                }),
                ["volumes"] = new JsonArray(new JsonObject
                {
                    ["name"] = "study",
                    ["persistentVolumeClaim"] = new JsonObject { ["claimName"] = Claim },
                }),
            },
        };
        var job = new JsonObject
        {
            ["apiVersion"] = "batch/v1",
            ["kind"] = "Job",
            ["metadata"] = new JsonObject { ["name"] = NameOf(what) },
            ["spec"] = spec,
        };
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            job.WriteTo(writer);
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }
}
