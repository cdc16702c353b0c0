using System.Text.Json.Nodes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;

namespace AxleRisk.App.Schemas;

/// <summary>The JSON Schema of a remedy's changes: names of inputs in quotes, or tables of them behind dotted keys.</summary>
internal static class ChangesSchema
{
    /// <summary>The definition.</summary>
    public static JsonObject Make()
    {
        JsonObject changes = Schema.Closed(
        [
            .. InputNames.Sections.SelectMany(s => s.Select(k => Schema.Pair($"{s.Key}.{k.Key}", Change(k)))),
            .. InputNames.Words.Select(w => Schema.Pair(w.Name, ScenarioSchema.Described(w.Key))),
            .. InputNames.Sections.Where(s => s.Key != "trip")
                .Select(s => Schema.Pair(s.Key, Schema.Closed(s.Select(k => Schema.Pair(k.Key, Change(k)))))),
            Schema.Pair("detail", Schema.Closed(
                InputNames.Words.Select(w => Schema.Pair(w.Key.Key, ScenarioSchema.Described(w.Key))))),
            Schema.Pair("legs", Named(InputNames.OfLeg, [])),
            Schema.Pair(CheckedSection.Table, Sections()),
            Schema.Pair("trip", Named(
                InputNames.OfTripLeg,
                [Schema.Pair(TripQuantities.AlreadyDriven.Key, Change(KeyFormat.Of(TripQuantities.AlreadyDriven)))])),
        ]);
        changes["patternProperties"] = new JsonObject(
        [
            .. InputNames.OfLeg.Select(k => Schema.Pair(InputNames.LegPattern(k.Key), Change(k))),
            .. InputNames.OfTripLeg.Select(k => Schema.Pair(InputNames.TripLegPattern(k.Key), Change(k))),
            .. InputNames.OfEvent.Select(k => Schema.Pair(InputNames.EventPattern(k.Key, "(legs|trip)"), Change(k))),
            .. InputNames.OfSection.Select(k => Schema.Pair(InputNames.SectionPattern(k.Key), Change(k))),
        ]);
        changes["minProperties"] = 1;
        return changes;
    }

    private static JsonObject Sections()
    {
        JsonObject named = Schema.Closed([]);
        named["additionalProperties"] = Schema.Closed(InputNames.OfSection.Select(k => Schema.Pair(k.Key, Change(k))));
        return named;
    }

    // Legs by their names.
    private static JsonObject Named(IEnumerable<KeyFormat> ofLeg, IEnumerable<KeyValuePair<string, JsonNode?>> others)
    {
        JsonObject named = Schema.Closed(others);
        JsonObject events = Schema.Closed([]);
        events["additionalProperties"] = Schema.Closed(InputNames.OfEvent.Select(k => Schema.Pair(k.Key, Change(k))));
        named["additionalProperties"] = Schema.Closed(
            ofLeg.Select(k => Schema.Pair(k.Key, Change(k))).Append(Schema.Pair("events", events)));
        return named;
    }

    private static JsonObject Change(KeyFormat key) => key.Quantity is null ? ScenarioSchema.Described(key) : new()
    {
        ["title"] = key.Label,
        ["anyOf"] = Schema.List(
            Schema.Number(key.Quantity!.Domain), Schema.Ref(DistributionSchema.Name), Schema.Ref(DistributionSchema.Times)),
    };
}
