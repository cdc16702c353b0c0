using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace AxleRisk.App.Documents;

/// <summary>The parts that all JSON answers share. Numbers that do not exist (no failures, too few rows) are null.</summary>
internal static class Json
{
    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Write(JsonObject document) => document.ToJsonString(Options);

    public static JsonNode? Number(double x) => double.IsFinite(x) ? JsonValue.Create(x) : null;

    public static JsonArray List<T>(IEnumerable<T> items, Func<T, JsonNode?> show) => [.. items.Select(show)];
}
