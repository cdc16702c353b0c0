using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using AxleRisk.Files.Toml;

namespace AxleRisk.App.Tests.Schemas;

/// <summary>A scenario file as JSON, as an editor's checker sees it, and back.</summary>
internal static class Toml
{
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The JSON of a text that is valid TOML.</summary>
    public static JsonNode ToJson(string text)
    {
        ErrorLog errors = new("a.toml");
        TomlTable? tree = TomlTree.Parse(text, errors);
        errors.ThrowIfAny();
        return ToJson(tree!);
    }

    /// <summary>A TOML text of a JSON object: its tables stand inline.</summary>
    public static string Of(JsonObject json) => string.Concat(json.Select(p => $"{Key(p.Key)} = {Of(p.Value!)}\n"));

    private static JsonNode ToJson(TomlNode node) => node switch
    {
        TomlTable table => new JsonObject(table.Entries.Select(e => KeyValuePair.Create(e.Key, (JsonNode?)ToJson(e.Node)))),
        TomlArray array => new JsonArray([.. array.Items.Select(ToJson)]),
        TomlText text => JsonValue.Create(text.Text),

        // JSON has no such numbers, nor dates.
        TomlNumber { Number: double n } when double.IsFinite(n) => JsonValue.Create(n),
        TomlNumber => JsonValue.Create(node.Shown),
        _ => JsonValue.Create(node.Shown is "true" or "false" ? node.Shown == "true" : true),
    };

    private static string Of(JsonNode node) => node switch
    {
        JsonObject o => $"{{ {string.Join(", ", o.Select(p => $"{Key(p.Key)} = {Of(p.Value!)}"))} }}",
        JsonArray a => $"[{string.Join(", ", a.Select(i => Of(i!)))}]",
        _ => node.ToJsonString(Plain),
    };

    private static string Key(string key) => JsonValue.Create(key).ToJsonString(Plain);
}
