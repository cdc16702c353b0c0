using System.Globalization;
using System.Runtime.Intrinsics.X86;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using AxleRisk.App.Tests.Files;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

/// <summary>
/// Every command on every shipped scenario still prints the figures that stand in tests/data/digits. They prove nothing about the figures,
/// for which other tests have sources from outside; they notice that one has changed. The environment variable AXLERISK_NEW_DIGITS writes
/// them anew: read what git shows before you commit it.
/// </summary>
public sealed class KnownDigitsTests
{
    // Machines with other vectors round otherwise; docs/accuracy.md says how far that goes.
    private const double Tolerance = 3e-4;

    // A longer array is data or a curve for drawing.
    private const int LongestArray = 64;

    // Of the machine and the program.
    private static readonly string[] Passing = ["model_version", "evaluations_per_second", "seconds", "states"];

    private static readonly string Folder = Repository.PathTo("tests", "data", "digits");

    private static readonly JsonSerializerOptions Written = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static TheoryData<string> Questions =>
    [
        .. from scenario in Repository.Names
           from question in (string[])
           [
               "base", "risk -n 2000", "risk -n 2000 --sampling latin-hypercube --method crude", "rank -n 20000", "combine -n 12000",
               "causes -n 8000 --failed-between 10000,90000", "causes -n 4000 --survived 90000",
           ]
           where scenario != "old-truck" || !question.Contains("90000") // it was looked at later
           select $"{question} {scenario}",
        "causes -n 8000 --failed-between 120000,150000 old-truck",
        "causes -n 4000 old-truck",
        "trip -n 1024 old-truck",
        "inspect -n 1024 old-truck",
        .. from scenario in (string[])["warranty-clinic-van", "desert-crossing", "broken-housing",
            "quarry-shuttle"] select $"remedies -n 2000 {scenario}",
        "check quarry-shuttle",
        "risk -n 3000 --sampling plain --method conditional benchmark-five-legs",
        "risk -n 3000 --method importance --distances 500,5000 --cross-check benchmark-five-legs",
        "risk -n 3000 --method importance --distances 500,5000 warranty-clinic-van",
        "risk -n 4000 --until-cov 0.1 --distances 900 warranty-clinic-van",
        "rank -n 6000 --sampling plain warranty-clinic-van",
        "combine -n 12000 --sampling plain benchmark-five-legs",
        "causes -n 60000 --failed-at 40000 warranty-clinic-van",
        "fleet -n 8192 warranty-clinic-van",
        "trip -n 1024 desert-crossing",
        "trip -n 1024 --sampling plain --method crude desert-crossing",
        "confirm --points 1 --km 0.2 quarry-shuttle",
        "confirm --points 1 --km 0.2 --damper-bump 0.7 --damper-rebound 1.3 --lift-off no benchmark-five-legs",
        "compare -n 2000 benchmark-five-legs warranty-clinic-van",
        "learn -n 65536 light-truck",
        "fit light-truck/walls.csv --column wall_mm",
        "decide -n 2000 broken-housing",
        "decide -n 2000 desert-crossing",
        "decide -n 2000 warranty-clinic-van",
        "measure -n 2000 broken-housing",
        "measure -n 2000 warranty-clinic-van",
        "inspect -n 2000 desert-crossing",
    ];

    [Theory]
    [MemberData(nameof(Questions))]
    public void A_figure_changes_only_on_purpose(string question)
    {
        Assert.SkipUnless(Avx2.IsSupported && Fma.IsSupported,
            "rounding differs without fused multiplications: docs/accuracy.md says how far");
        string[] words = question.Split(' ');
        // In the order of other tests, which share the run.
        string[] scenarios = [.. words.Where(Repository.Names.Contains)];
        (int exit, string output, string error) =
            Cli.Run([words[0], .. scenarios.Select(Cli.Shipped),
                .. words[1..].Where(w => !scenarios.Contains(w)).Select(PathOr), "--json"]);
        Assert.True(exit == 0, error);
        var now = (JsonObject)Figures(JsonNode.Parse(output))!;
        string path = Path.Combine(Folder, string.Join('_', words.Select(w => Path.GetFileName(w).TrimStart('-'))) + ".json");
        if (Environment.GetEnvironmentVariable("AXLERISK_NEW_DIGITS") is { Length: > 0 })
        {
            Directory.CreateDirectory(Folder);
            File.WriteAllText(path, Lines(now));
            return;
        }

        var differences = new List<string>();
        Compare("", JsonNode.Parse(File.ReadAllText(path)), now, differences);
        Assert.Empty(differences);
    }

    private static string PathOr(string word) =>
        word.EndsWith(".csv", StringComparison.Ordinal) ? Repository.PathTo(["scenarios", .. word.Split('/')])
        : Repository.Names.Contains(word) ? Cli.Shipped(word) : word;

    private static void Compare(string place, JsonNode? known, JsonNode? now, List<string> differences)
    {
        switch (known, now)
        {
            case (JsonObject a, JsonObject b):
                foreach (string key in a.Select(x => x.Key).Union(b.Select(x => x.Key)))
                {
                    Compare($"{place}/{key}", a[key], b[key], differences);
                }

                break;
            case (JsonArray a, JsonArray b) when a.Count == b.Count:
                for (int i = 0; i < a.Count; i++)
                {
                    Compare($"{place}/{i}", a[i], b[i], differences);
                }

                break;
            default:
                if (!Same(known, now))
                {
                    differences.Add($"{place}: {known?.ToJsonString() ?? "nothing"} has become {now?.ToJsonString() ?? "nothing"}");
                }

                break;
        }
    }

    private static bool Same(JsonNode? known, JsonNode? now) =>
        known?.GetValueKind() == JsonValueKind.Number && now?.GetValueKind() == JsonValueKind.Number
            ? Math.Abs(known.GetValue<double>() - now.GetValue<double>()) <= Tolerance * Math.Abs(known.GetValue<double>()) + 1e-12
            : JsonNode.DeepEquals(known, now);

    // Only the figures: texts have tests of their own, data stand in the scenario.
    private static JsonNode? Figures(JsonNode? node) => node switch
    {
        JsonObject o => new JsonObject(o.Where(x => !Passing.Contains(x.Key)).Select(x => KeyValuePair.Create(x.Key, Figures(x.Value)))
            .Where(x => x.Value is not null)),
        JsonArray { Count: <= LongestArray } a => new JsonArray([.. a.Select(Figures)]),
        JsonValue v when v.GetValueKind() == JsonValueKind.Number =>
            JsonNode.Parse(v.GetValue<double>().ToString("G7", CultureInfo.InvariantCulture)),
        _ => null,
    };

    // One line for each key of the document, so that a difference can be read.
    private static string Lines(JsonObject figures) =>
        "{\n" + string.Join(",\n", figures.Select(f => $"\"{f.Key}\": {f.Value!.ToJsonString(Written)}")) + "\n}\n";
}
