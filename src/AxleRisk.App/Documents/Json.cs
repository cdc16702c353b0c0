using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Files;

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

    public static JsonObject Of(Interval interval) => new()
    {
        ["estimate"] = Number(interval.Estimate),
        ["low"] = Number(interval.Low),
        ["high"] = Number(interval.High),
    };

    /// <summary>A probability that may have a bound alone: then the estimate is null and the upper end the bound.</summary>
    public static JsonObject Resolved(Interval probability)
    {
        JsonObject row = Of(probability);
        row["resolved"] = !double.IsNaN(probability.Estimate);
        return row;
    }

    public static JsonArray List<T>(IEnumerable<T> items, Func<T, JsonNode?> show) => [.. items.Select(show)];

    /// <summary>What the answer is about.</summary>
    public static JsonObject Head(string command, ScenarioDocument document) => new()
    {
        ["command"] = command,
        ["title"] = document.Scenario.Title,
        ["file"] = document.FileName,
        ["digest"] = document.Digest,
        ["version"] = Product.Version,
    };

    /// <summary>Adds what is needed to repeat a run, and how long it took.</summary>
    public static JsonObject WithRun(this JsonObject document, RunRecord run, TimeSpan elapsed)
    {
        document["evaluations"] = run.Evaluations;
        document["evaluations_requested"] = run.Requested;
        document["partial"] = run.IsPartial;
        document["seed"] = run.Seed;
        document["sampling"] = run.Sampling;
        document["model_version"] = run.ModelVersion;
        document["seconds"] = Math.Round(elapsed.TotalSeconds, 3);
        return document;
    }

    /// <summary>Adds the defaults in force and the caution.</summary>
    public static JsonObject WithNotes(this JsonObject document, ScenarioDocument scenario)
    {
        document["assumed"] = List(
            scenario.Scenario.Inputs.Where(i => i.IsDefault && i.Value is Core.Scenarios.Value.Uncertain),
            i => new JsonObject { ["name"] = i.Name, ["source"] = i.Quantity.DefaultSource });
        document["caution"] = Text.Caution.Sentence;
        return document;
    }
}
