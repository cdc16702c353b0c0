using System.Text.Json.Nodes;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Schemas;
using AxleRisk.App.Tests.Commands;
using AxleRisk.App.Tests.Files;
using Xunit;

namespace AxleRisk.App.Tests.Schemas;

/// <summary>What every command prints as JSON is as its schema says, key by key; and the schema refuses what is not.</summary>
public class DocumentSchemaTests
{
    // Each command with few evaluations, where they can be those of KnownDigitsTests: the form of the document does not depend on them.
    private static readonly Dictionary<string, string> Commands = new()
    {
        ["check"] = "",
        ["base"] = "",
        ["risk"] = "-n 2000",
        ["rank"] = "-n 20000",
        ["combine"] = "-n 12000",
        ["trip"] = "-n 1024",
        ["fleet"] = "-n 8192",
        ["causes"] = "-n 16384",
        ["remedies"] = "-n 2000",
        ["learn"] = "-n 65536",
        ["sweep"] = "--input axle.wall_mm=5..7:3 --input use.speed_factor=0.8..1.2:3 -n 1024",
        ["confirm"] = "--km 0.3 --points 1",
    };

    public static TheoryData<string, string> Runs
    {
        get
        {
            var runs = new TheoryData<string, string>();
            foreach (string scenario in Repository.Names)
            {
                foreach (string command in Commands.Keys)
                {
                    runs.Add(command, scenario);
                }
            }

            return runs;
        }
    }

    public static TheoryData<string> Names => [.. SchemaBook.Names.Skip(1)];

    [Theory]
    [MemberData(nameof(Runs))]
    public void A_shipped_scenarios_answer_is_as_its_schema_says(string command, string scenario)
    {
        (int exit, string text, string error) = Cli.Run(
            [command, Cli.Shipped(scenario), .. Commands[command].Split(' ', StringSplitOptions.RemoveEmptyEntries), "--json"]);
        if (exit == 2)
        {
            Assert.Contains(command, (string[])["trip", "fleet", "causes", "learn", "remedies", "sweep", "combine", "rank"]);
            Assert.Equal("", text);
            Assert.Contains(scenario, error, StringComparison.Ordinal);
            return;
        }

        Assert.Equal(0, exit);
        JsonObject document = JsonNode.Parse(text)!.AsObject();
        Assert.Empty(Checked.Faults(command, document));
        RefusesFaults(command, document);
    }

    [Fact]
    public void A_comparison_is_as_its_schema_says() => Holds("compare", [
        "compare", Cli.Shipped("warranty-clinic-van"), Cli.Shipped("broken-housing"), "-n", "1024", "--json"]);

    [Fact]
    public void A_merged_study_is_as_its_schema_says()
    {
        string folder = TemporaryFolder.New();
        string[] parts = [Path.Combine(folder, "1"), Path.Combine(folder, "2")];
        for (int i = 0; i < parts.Length; i++)
        {
            Assert.Equal(0, Cli.Run("risk", Cli.Shipped("broken-housing"), "-n", "65536", "--part", $"{i + 1}/2", "--out", parts[i]).Exit);
        }

        Holds("merge", ["merge", .. parts, "--json"]);
    }

    [Theory]
    [InlineData("failed_at_km = 30000")]
    [InlineData("survived_km = 30000")]
    [InlineData("")]
    public void Causes_without_a_range_of_life_are_as_their_schema_says(string life)
    {
        string text = FullScenario.Text.Replace("survived_km = 40000", life, StringComparison.Ordinal);
        Holds("causes", ["causes", Cli.Temporary(text), "-n", "2048", "--json"]);
    }

    [Theory]
    [InlineData("risk", "--method", "crude")]
    [InlineData("risk", "--method", "importance")]
    [InlineData("rank", "--subsets")]
    [InlineData("trip")]
    [InlineData("fleet")]
    [InlineData("remedies")]
    [InlineData("sweep", "--input", "detail.category=E..F")]
    public void Everything_at_once_is_as_its_schema_says(string command, params string[] options) =>
        Holds(command, [command, Cli.Temporary(FullScenario.Text.Replace("\"bearing\"]", "]", StringComparison.Ordinal)), "-n", "2048", .. options, "--json"]);

    // A form writes what it describes; that no two keys of a form have one name it cannot see.
    [Theory]
    [MemberData(nameof(Names))]
    public void Every_key_has_a_meaning_and_stands_once(string command)
    {
        List<IJsonForm> seen = [];
        See(DocumentBook.All.First(d => d.Command == command).Form, seen);
        Assert.All(seen, form =>
        {
            Assert.All(form.Keys, k => Assert.True(k.Meaning.Length > 1, k.Name));
            Assert.Equal(form.Keys.Count, form.Keys.Select(k => k.Name).Distinct().Count());
        });
    }

    // Forms of one name would be one definition.
    [Fact]
    public void No_two_forms_have_one_name()
    {
        List<IJsonForm> seen = [];
        foreach (CommandDocument document in DocumentBook.All)
        {
            See(document.Form, seen);
        }

        string[] names = [.. seen.Select(f => f.Name).OfType<string>()];
        Assert.True(names.Length > 8);
        Assert.Equal(names.Length, names.Distinct().Count());
    }

    private static void Holds(string schema, string[] arguments)
    {
        (int exit, string text, string error) = Cli.Run(arguments);
        Assert.True(exit == 0, error);
        Assert.Empty(Checked.Faults(schema, JsonNode.Parse(text)!));
    }

    // A key too many, a key too few, and another type, at the top and in the first object of each list.
    private static void RefusesFaults(string command, JsonObject document)
    {
        JsonObject Copy() => document.DeepClone().AsObject();
        JsonObject more = Copy();
        more["unheard_of"] = 1;
        Assert.False(Checked.IsGood(command, more));
        string[] optional =
            ["bearing_kind", "currency", "modes", "seconds", "evaluations_per_second", "events", "sn_curve_source", "strikes", "crack_depth",
                "crack_depth_vehicles", "looks", "history", "stretch", "seen"];
        foreach (string key in document.Select(p => p.Key).Except(optional))
        {
            JsonObject less = Copy();
            less.Remove(key);
            Assert.False(Checked.IsGood(command, less), key);
            JsonObject other = Copy();
            other[key] = new JsonArray(new JsonArray());
            Assert.False(Checked.IsGood(command, other), key);
            if (document[key] is JsonArray { Count: > 0 } list && list[0] is JsonObject)
            {
                JsonObject inner = Copy();
                inner[key]![0]!["unheard_of"] = 1;
                Assert.False(Checked.IsGood(command, inner), key);
            }
        }
    }

    private static void See(IJsonForm form, List<IJsonForm> seen)
    {
        if (seen.Contains(form))
        {
            return;
        }

        seen.Add(form);
        foreach (JsonShape shape in form.Keys.Select(k => k.Shape))
        {
            JsonShape inner = shape is JsonShape.List list ? list.Of : shape is JsonShape.Map map ? map.Of : shape;
            if (inner is JsonShape.Object o)
            {
                See(o.Form, seen);
            }
        }
    }
}
