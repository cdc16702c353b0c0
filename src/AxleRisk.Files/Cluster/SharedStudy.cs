using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace AxleRisk.Files.Cluster;

/// <summary>
/// A study that is run in parts, as the folder of it says: what is run, on which copy of the scenario, in how many parts. The folder holds
/// everything that a part needs, and may be moved, or be mounted elsewhere.
/// </summary>
/// <param name="Folder">The folder.</param>
/// <param name="Study">The study's command.</param>
/// <param name="Digest">The scenario's digest.</param>
/// <param name="Version">The version of the program.</param>
/// <param name="ModelVersion">The version of the damage model.</param>
/// <param name="Parts">The number of parts.</param>
/// <param name="IsTogether">Whether the parts wait for one another on the way, rather than for nothing.</param>
/// <param name="Arguments">What stands behind command and scenario on the command line.</param>
public sealed record SharedStudy(
    string Folder, string Study, string Digest, string Version, int ModelVersion, int Parts, bool IsTogether,
    ImmutableArray<string> Arguments)
{
    /// <summary>The name of the file that says what is run.</summary>
    public const string FileName = "study.json";

    private const string Kind = "axlerisk shared study";
    private const string Copied = "scenario";
    private const int Largest = 1 << 20;

    /// <summary>The file that says what is run.</summary>
    public string Path => System.IO.Path.Combine(Folder, FileName);

    /// <summary>The copy of the scenario.</summary>
    public required string ScenarioName { get; init; }

    /// <summary>The path of the scenario's copy.</summary>
    public string Scenario => System.IO.Path.Combine(Folder, Copied, ScenarioName);

    /// <summary>What the parts have done.</summary>
    public string PartsFolder => System.IO.Path.Combine(Folder, "parts");

    /// <summary>What the parts and the merge have printed.</summary>
    public string LogFolder => System.IO.Path.Combine(Folder, "log");

    /// <summary>What identifies the study in the files of its parts: SHA-256 of all that decides its digits.</summary>
    public string Id => Sha256.HexOf(Bytes());

    /// <summary>Writes the folder: the copy of the scenario with its data files, and last the file that says what is run.</summary>
    /// <exception cref="IOException">It cannot be written.</exception>
    public void Write(ScenarioDocument document)
    {
        WholeFolder.Make(PartsFolder);
        WholeFolder.Make(LogFolder);
        foreach (SourceFile source in document.Sources)
        {
            string path = System.IO.Path.Combine(Folder, Copied, source.Name);
            WholeFolder.Make(System.IO.Path.GetDirectoryName(path)!);
            WholeFile.Write(path, source.Bytes.ToArray());
        }

        WholeFile.Write(Path, Bytes());
    }

    /// <summary>Reads the folder of a study.</summary>
    /// <exception cref="ScenarioException">It is none.</exception>
    public static SharedStudy Read(string folder)
    {
        string path = System.IO.Path.Combine(folder, FileName);
        try
        {
            JsonObject document = JsonNode.Parse(FileBytes.Read(path, Largest))!.AsObject();
            if ((string?)document["kind"] != Kind || document["parts"]!.GetValue<int>() is not (> 0 and var parts))
            {
                throw new JsonException();
            }

            return new SharedStudy(
                folder, document["study"]!.GetValue<string>(), document["digest"]!.GetValue<string>(),
                document["version"]!.GetValue<string>(), document["model_version"]!.GetValue<int>(), parts,
                document["together"]!.GetValue<bool>(), [.. document["arguments"]!.AsArray().Select(a => a!.GetValue<string>())])
            {
                ScenarioName = document["scenario"]!.GetValue<string>(),
            };
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e) && e is not ArgumentException)
        {
            throw Bad(path, FileBytes.Reason(e) + "; axlerisk cluster slurm FILE --parts K --out DIR makes such a folder");
        }
        catch (Exception e) when (e is JsonException or NullReferenceException or InvalidOperationException or FormatException
            or ArgumentException)
        {
            throw Bad(path, "it does not say which study is run in parts: make the folder anew with axlerisk cluster slurm");
        }
    }

    internal static ScenarioException Bad(string path, string message) => new([new ScenarioError(path, 0, 0, message)]);

    private byte[] Bytes()
    {
        var document = new JsonObject
        {
            ["kind"] = Kind,
            ["study"] = Study,
            ["scenario"] = ScenarioName,
            ["digest"] = Digest,
            ["version"] = Version,
            ["model_version"] = ModelVersion,
            ["parts"] = Parts,
            ["together"] = IsTogether,
            ["arguments"] = new JsonArray([.. Arguments.Select(a => (JsonNode)a)]),
        };
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            document.WriteTo(writer);
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }
}
