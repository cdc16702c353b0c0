using System.Collections.Immutable;
using System.Text.Json.Nodes;
using AxleRisk.Files.Format;

namespace AxleRisk.App.Schemas;

/// <summary>The JSON Schema of a distribution: its family says which keys it has.</summary>
internal static class DistributionSchema
{
    /// <summary>Its name among the definitions.</summary>
    public const string Name = "distribution";

    /// <summary>The name of a factor on a value among the definitions.</summary>
    public const string Times = "times";

    /// <summary>The definitions of all families, and of the choice between them.</summary>
    public static IEnumerable<KeyValuePair<string, JsonNode?>> Definitions()
    {
        yield return Schema.Pair(Name, new JsonObject
        {
            ["type"] = "object",
            ["description"] = DistributionFormat.Common.Meaning,
            ["required"] = Schema.Texts(Name),
            ["properties"] = new JsonObject { [Name] = ScenarioSchema.Described(DistributionFormat.Common.Find(Name)!) },
            ["allOf"] = Schema.List(DistributionFormat.Families.Select(f => new JsonObject
            {
                ["if"] = new JsonObject { ["properties"] = new JsonObject { [Name] = new JsonObject { ["const"] = f } } },
                ["then"] = Schema.Ref(f),
            })),
        });
        foreach (string family in DistributionFormat.Families)
        {
            yield return Schema.Pair(family, Family(family));
        }
    }

    private static JsonObject Family(string family)
    {
        JsonObject schema = ScenarioSchema.Table(DistributionFormat.Of(family));
        (ImmutableArray<string> Required, ImmutableArray<string> Optional)[] forms = [.. DistributionFormat.FormsOf(family)];
        string[] all = [.. forms.SelectMany(f => f.Required.Concat(f.Optional)).Distinct()];
        schema["anyOf"] = Schema.List(forms.Select(form =>
        {
            JsonObject one = Schema.Has(form.Required);
            string[] others = [.. all.Except(form.Required).Except(form.Optional)];
            if (others.Length > 0)
            {
                one["properties"] = new JsonObject(others.Select(o => Schema.Pair(o, JsonValue.Create(false))));
            }

            return one;
        }));
        return schema;
    }
}
