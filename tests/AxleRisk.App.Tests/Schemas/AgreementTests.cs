using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using AxleRisk.App.Tests.Files;
using AxleRisk.Files;
using AxleRisk.Files.Format;
using Xunit;

namespace AxleRisk.App.Tests.Schemas;

/// <summary>
/// The schema and the reader agree: for every key of every table, absent, doubled with an unknown one, and with values of all kinds.
/// The schema refuses nothing that the reader takes, and takes only what the reader refuses for a reason that spans keys or files.
/// </summary>
public partial class AgreementTests
{
    private static readonly string[] Values =
    [
        "-1", "0", "0.5", "1", "2", "300", "1e9", "\"\"", "\"x\"", "\"E\"", "\"axle.wall_mm\"", "\"trip.pass.km\"", "true", "[]", "[1]", "[0.5, 0.5]",
        "[\"E\"]", "{}", """{ "distribution": "normal", "mean": 5, "sd": 0.01 }""",
        """{ "distribution": "normal", "mean": 5, "sd": 0.01, "knowledge": "unknown" }""", """{ "distribution": "normal", "mean": 5 }""",
        """{ "distribution": "normal", "mean": 5, "sd": 0.1, "cov": 0.1 }""", """{ "distribution": "normal", "mean": "5", "sd": 0.1 }""",
        """{ "distribution": "nomal", "mean": 5, "sd": 0.1 }""", """{ "distribution": "choice", "values": [1, 2], "weights": [0.5, 0.5], "min": 1 }""",
        """{ "distribution": "choice", "values": ["E", "F"], "weights": [0.5, 0.5] }""", """{ "distribution": "choice", "values": [], "weights": [] }""",
        """{ "distribution": "uniform", "quantiles": [[0.1, 0.2], [0.9]] }""", """{ "distribution": "pert", "low": 1, "mode": 2, "high": 3, "shape": 5 }""",
        """{ "times": 0.9 }""", """{ "times": -1 }""", """{ "above": 5.5 }""", """{ "above": 5.5, "under": 6 }""",
    ];

    public static TheoryData<string> Tables => [.. ScenarioFormat.All.Select(t => t.Path)];

    [Theory]
    [MemberData(nameof(Tables))]
    public void What_is_done_to_a_key_is_told_alike(string path)
    {
        TableFormat table = ScenarioFormat.All.First(t => t.Path == path);
        JsonObject whole = FullScenario.Around(path);
        List<string> apart = [];
        int refused = 0;
        foreach (KeyFormat key in table.Keys)
        {
            string[] values = [.. Values, .. key.Kind is KeyKind.Word word ? word.Words.Select(w => $"\"{w}\"") : []];
            foreach (string? value in values.Prepend(null))
            {
                JsonObject json = whole.DeepClone().AsObject();
                foreach (JsonObject at in At(json, path))
                {
                    at.Remove(key.Key);
                    if (value is not null)
                    {
                        at[key.Key] = JsonNode.Parse(value);
                    }

                    refused += Compare(json, $"{path}.{key.Key} = {value ?? "absent"}", apart);
                }
            }
        }

        foreach (JsonObject at in At(whole, path))
        {
            at["unheard_of"] = 1;
            refused += Compare(at.Root.AsObject(), $"{path}.unheard_of", apart);
        }

        Assert.True(refused > table.Keys.Length);
        Assert.Empty(apart);
    }

    [Theory]
    [InlineData("axle", "shape", "\"box\"", "width_mm", "90", "height_mm", "80", "outside_diameter_mm", null)]
    [InlineData("axle", "shape", "\"box\"", "width_mm", "90", "height_mm", "80")]
    [InlineData("axle", "shape", "\"box\"", "width_mm", "90", "outside_diameter_mm", null)]
    [InlineData("axle", "shape", "\"given\"", "section_modulus_mm3", "30000", "outside_diameter_mm", null, "wall_mm", null)]
    [InlineData("axle", "shape", "\"given\"", "section_modulus_mm3", "30000", "outside_diameter_mm", null, "corrosion_loss_mm", "1")]
    [InlineData("detail", "catalogue", "\"IIW\"", "category", "\"90\"")]
    [InlineData("detail", "catalogue", "\"IIW\"", "category", "\"FAT 90\"")]
    [InlineData("detail", "catalogue", "\"IIW\"", "category", "\"91\"")]
    [InlineData("detail", "catalogue", "\"EN 1993-1-9\"", "category", "\"E\"")]
    [InlineData("evidence", "failed_at_km", "5", "survived_km", null)]
    [InlineData("evidence", "failed_between_km", "[5, 6]", "survived_km", null)]
    [InlineData("evidence", "failed_between_km", "[5, 6, 7]", "survived_km", null)]
    [InlineData("fleet", "sales_shares", null, "sales_months", "12")]
    [InlineData("fleet", "target_km", null, "target_fraction", null)]
    [InlineData("trip.legs", "road_class", null, "like", null, "roughness_1e_6_m3", "500", "speed_km_per_h", "30")]
    [InlineData("trip.legs", "road_class", null, "like", "\"gravel\"", "speed_km_per_h", null)]
    [InlineData("trip.legs", "road_class", "\"B\"", "like", "\"gravel\"")]
    public void Several_keys_at_once_are_told_alike(string path, params string?[] keysAndValues)
    {
        JsonObject json = FullScenario.Around(path);
        foreach (JsonObject at in At(json, path))
        {
            foreach (string?[] pair in keysAndValues.Chunk(2))
            {
                at.Remove(pair[0]!);
                if (pair[1] is not null)
                {
                    at[pair[0]!] = JsonNode.Parse(pair[1]!);
                }
            }
        }

        List<string> apart = [];
        Compare(json, path, apart);
        Assert.Empty(apart);
    }

    [Fact]
    public void The_whole_is_good()
    {
        Assert.Empty(Checked.Faults("scenario", FullScenario.Json()));
        Assert.Empty(ErrorsOf(Toml.Of(FullScenario.Json())));
    }

    // 1 where the reader refuses it.
    private static int Compare(JsonObject json, string what, List<string> apart)
    {
        bool isTaken = Checked.IsGood("scenario", json);
        string[] errors = ErrorsOf(Toml.Of(json));
        if (errors.Length == 0 && !isTaken)
        {
            apart.Add($"{what}: the schema alone refuses it: {string.Join("; ", Checked.Faults("scenario", json).Take(3))}");
        }
        else if (isTaken && !Array.TrueForAll(errors, e => BeyondSchemas().IsMatch(e)))
        {
            apart.Add($"{what}: the reader alone refuses it: {string.Join("; ", errors.Where(e => !BeyondSchemas().IsMatch(e)).Take(3))}");
        }

        return errors.Length > 0 ? 1 : 0;
    }

    private static string[] ErrorsOf(string text)
    {
        try
        {
            Good.Parse(text, FullScenario.DataFile);
            return [];
        }
        catch (ScenarioException e)
        {
            return [.. e.Errors.Select(x => x.Message)];
        }
    }

    // The tables of a path: all of an array.
    private static IEnumerable<JsonObject> At(JsonObject json, string path) => (path.Length == 0 ? [] : path.Split('.'))
        .Aggregate<string, IEnumerable<JsonNode?>>(
            [json], (nodes, part) => nodes.Select(n => n![part]).SelectMany(n => n is JsonArray a ? a.AsEnumerable() : new[] { n }))
        .OfType<JsonObject>();

    // What spans keys, tables or files, or follows from the numbers of a distribution.
    [GeneratedRegex(
        "cannot read|is no unknown|as many (states )?as|has no state|at least one .*states|positive definite|is certain|is not with probability|add up to 1|must not be above half of|needs a (corrugated_share|range|crack to look for|.crack.)|there are two "
            + "|there is no (input|remedy|inspection)|must not be below a50_mm|must be below (the wall|required_km)|names a distance twice|lies (after|beyond)|deeper than the wall|needs axle.wall_mm|must be a leg of the usual use|must be as many as|must not be above the last knee|do not meet at|the knees must fall|is (not )?a choice; state it|has no category|stretch|one for each leg"
            + @"|life_scatter must be stated|evidence\.cracked_at (must|needs)|is the first checked section"
            + @"|^evidence\.(measured\.value|known\.state) must be")]
    private static partial Regex BeyondSchemas();
}
