using System.Text.Json.Nodes;
using AxleRisk.App.Documents;
using AxleRisk.App.Documents.Forms;

namespace AxleRisk.App.Schemas;

/// <summary>The JSON Schema of a command's JSON, made of the form that writes it.</summary>
internal sealed class DocumentSchema
{
    private readonly SortedDictionary<string, JsonObject> definitions = new(StringComparer.Ordinal);

    /// <summary>The schema of a document.</summary>
    public static JsonObject Make(CommandDocument document)
    {
        var schema = new DocumentSchema();
        JsonKey[] keys = document.IsOfScenario ? [.. WholeDocument.Keys(document.Form, document.IsOfRun)] : [.. document.Form.Keys];
        JsonObject whole = schema.Of(keys);
        whole["properties"]!["command"]!["const"] = document.Command;
        return Schema.Whole(
            $"What axlerisk {document.Command} --json prints", whole,
            schema.definitions.Select(d => Schema.Pair(d.Key, d.Value)));
    }

    private JsonObject Of(IReadOnlyList<JsonKey> keys) => Schema.Closed(
        keys.Select(k => Schema.Pair(k.Name, Of(k))), keys.Where(k => !k.IsOptional).Select(k => k.Name));

    private JsonObject Of(JsonKey key)
    {
        JsonObject schema = OrNull(Of(key.Shape), key.IsNullable);
        schema.Insert(0, "description", key.Meaning.Replace("`", "", StringComparison.Ordinal));
        return schema;
    }

    private JsonObject Of(JsonShape shape) => shape switch
    {
        JsonShape.Number => Schema.Type("number"),
        JsonShape.Whole => Schema.Type("integer"),
        JsonShape.Text => Schema.Type("string"),
        JsonShape.Flag => Schema.Type("boolean"),
        JsonShape.TextOrNumber => new JsonObject { ["type"] = Schema.Texts("string", "number") },
        JsonShape.Word w => Schema.Word(w.Words),
        JsonShape.List l => Schema.Array(Of(l.Of)),
        JsonShape.Map m => new JsonObject { ["type"] = "object", ["additionalProperties"] = OrNull(Of(m.Of), m.MayBeNull) },
        JsonShape.Object { Form: { Name: string name } form } => Named(name, form),
        JsonShape.Object o => Of(o.Form.Keys),
        _ => throw new InvalidOperationException($"no schema of {shape}"),
    };

    private JsonObject Named(string name, IJsonForm form)
    {
        // Entered before it is made: a form may stand in itself.
        if (definitions.TryAdd(name, []))
        {
            definitions[name] = Of(form.Keys);
        }

        return Schema.Ref(name);
    }

    private static JsonObject OrNull(JsonObject schema, bool isNullable)
    {
        if (isNullable && schema["type"] is JsonNode type)
        {
            schema["type"] = Schema.Texts([.. type is JsonArray several ? several.Select(t => (string)t!) : [(string)type!], "null"]);
            return schema;
        }

        return isNullable ? Schema.AnyOf(schema, Schema.Type("null")) : schema;
    }
}
