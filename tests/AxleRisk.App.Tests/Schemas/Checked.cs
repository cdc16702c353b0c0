using System.Text.Json;
using System.Text.Json.Nodes;
using AxleRisk.App.Schemas;
using Json.Schema;

namespace AxleRisk.App.Tests.Schemas;

/// <summary>Checks documents with a general library for JSON Schema.</summary>
internal static class Checked
{
    private static readonly Dictionary<string, JsonSchema> Made =
        SchemaBook.Names.ToDictionary(n => n, n => JsonSchema.FromText(TextOf(n)));

    private static readonly EvaluationOptions AsList = new() { OutputFormat = OutputFormat.List };

    /// <summary>A schema as the command prints it.</summary>
    public static string TextOf(string schema) => AxleRisk.App.Documents.Json.Write(SchemaBook.Of(schema));

    /// <summary>Whether a document is as a schema says.</summary>
    public static bool IsGood(string schema, JsonNode document) => Made[schema].Evaluate(Element(document)).IsValid;

    /// <summary>What a schema has against a document.</summary>
    public static string[] Faults(string schema, JsonNode document)
    {
        EvaluationResults results = Made[schema].Evaluate(Element(document), AsList);
        return results.IsValid ? [] :
            [.. (results.Details ?? []).Where(d => d.Errors is { Count: > 0 }).SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Value}"))
                .Append("it is not valid")];
    }

    /// <summary>What the draft's own schema has against a schema.</summary>
    public static bool IsSchema(string schema) => MetaSchemas.Draft202012.Evaluate(Element(JsonNode.Parse(TextOf(schema))!)).IsValid;

    private static JsonElement Element(JsonNode node) => JsonSerializer.SerializeToElement(node);
}
