using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using AxleRisk.App.Answers;
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
    public static JsonObject WithRun(this JsonObject document, RunRecord run, TimeSpan? elapsed)
    {
        document["evaluations"] = run.Evaluations;
        document["evaluations_requested"] = run.Requested;
        document["partial"] = run.IsPartial;
        document["seed"] = run.Seed;
        document["sampling"] = run.Sampling;
        document["model_version"] = run.ModelVersion;
        if (elapsed is { } time)
        {
            document["seconds"] = Math.Round(time.TotalSeconds, 3);
            document["evaluations_per_second"] = Number(Math.Round(run.Evaluations / time.TotalSeconds));
        }

        return document;
    }

    /// <summary>Adds what the model does not know of the scenario, the defaults in force and the caution.</summary>
    public static JsonObject WithNotes(this JsonObject document, ScenarioDocument scenario) =>
        document.WithNotes(scenario, Text.Frame.Assumed(scenario.Scenario));

    /// <summary>The same, with a list of its own of what was assumed.</summary>
    public static JsonObject WithNotes(this JsonObject document, ScenarioDocument scenario, IReadOnlyList<Text.Assumption> assumed)
    {
        LiftOffDocument.AddTo(document, NoteBlocks.LiftOff(scenario));
        document["warnings"] = List(NoteBlocks.Warnings(scenario), w => JsonValue.Create(w.Text));
        document["assumed"] = List(assumed, a => new JsonObject { ["name"] = a.Name, ["source"] = a.Source });
        document["caution"] = Text.Caution.Sentence;
        return document;
    }
}
