using System.Text.Json.Nodes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Schemas;

/// <summary>The pieces of a JSON Schema, draft 2020-12.</summary>
internal static class Schema
{
    /// <summary>The draft, as its meta-schema is named.</summary>
    public const string Draft = "https://json-schema.org/draft/2020-12/schema";

    /// <summary>A whole schema: its title, what it is of, and the definitions that it refers to.</summary>
    public static JsonObject Whole(string title, JsonObject of, IEnumerable<KeyValuePair<string, JsonNode?>> definitions)
    {
        of.Insert(0, "$schema", Draft);
        of.Insert(1, "title", title);
        of["$defs"] = new JsonObject(definitions);
        return of;
    }

    /// <summary>A value of a type.</summary>
    public static JsonObject Type(string type) => new() { ["type"] = type };

    /// <summary>A definition of the same schema.</summary>
    public static JsonObject Ref(string name) => new() { ["$ref"] = $"#/$defs/{name}" };

    /// <summary>A number of a domain.</summary>
    public static JsonObject Number(Domain domain)
    {
        JsonObject number = Type("number");
        if (double.IsFinite(domain.Low))
        {
            number[domain.LowIncluded ? "minimum" : "exclusiveMinimum"] = domain.Low;
        }

        if (double.IsFinite(domain.High))
        {
            number[domain.HighIncluded ? "maximum" : "exclusiveMaximum"] = domain.High;
        }

        return number;
    }

    /// <summary>One of a few words.</summary>
    public static JsonObject Word(params IEnumerable<string> words) => new() { ["enum"] = Texts(words) };

    /// <summary>One of several.</summary>
    public static JsonObject AnyOf(params IEnumerable<JsonObject> those) => new() { ["anyOf"] = List(those) };

    /// <summary>A list of items.</summary>
    public static JsonObject Array(JsonObject items, int? least = null, int? most = null)
    {
        JsonObject array = Type("array");
        array["items"] = items;
        if (least > 0)
        {
            array["minItems"] = least;
        }

        if (most < int.MaxValue)
        {
            array["maxItems"] = most;
        }

        return array;
    }

    /// <summary>An object with these keys and no others.</summary>
    public static JsonObject Closed(IEnumerable<KeyValuePair<string, JsonNode?>> keys, params IEnumerable<string> required)
    {
        JsonObject closed = Type("object");
        closed["properties"] = new JsonObject(keys);
        string[] names = [.. required];
        if (names.Length > 0)
        {
            closed["required"] = Texts(names);
        }

        closed["additionalProperties"] = false;
        return closed;
    }

    /// <summary>That keys are there.</summary>
    public static JsonObject Has(params IEnumerable<string> keys) => new() { ["required"] = Texts(keys) };

    /// <summary>A key and what stands behind it.</summary>
    public static KeyValuePair<string, JsonNode?> Pair(string key, JsonNode value) => KeyValuePair.Create(key, (JsonNode?)value);

    /// <summary>Texts as a list.</summary>
    public static JsonArray Texts(params IEnumerable<string> texts) => [.. texts.Select(t => (JsonNode?)JsonValue.Create(t))];

    /// <summary>Objects as a list.</summary>
    public static JsonArray List(params IEnumerable<JsonObject> those) => [.. those.Select(o => (JsonNode?)o)];
}
