using System.Text.Json.Nodes;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;

namespace AxleRisk.App.Schemas;

/// <summary>
/// The JSON Schema of the scenario file, made of its format. It knows what can be told key by key; what depends on several tables
/// or on data files only the reader knows.
/// </summary>
internal static class ScenarioSchema
{
    private const string Input = "input";
    private const string Category = "category";
    private const string Choice = "word_choice";

    /// <summary>The schema.</summary>
    public static JsonObject Make() => Schema.Whole(
        "AxleRisk scenario", Table(ScenarioFormat.Top),
        [
            .. DistributionSchema.Definitions(),
            Schema.Pair(DistributionSchema.Times, Table(RemedyFormat.Times)),
            Schema.Pair(Choice, Table(DetailFormat.WordChoice)),
            Schema.Pair(Category, Schema.AnyOf(Schema.Type("string"), Schema.Ref(Choice))),
            Schema.Pair(Input, Schema.AnyOf(
                Schema.Word([.. InputNames.Fixed, .. InputNames.Words.Select(w => w.Name)]),
                Pattern(InputNames.LegPattern(OneOf(InputNames.OfLeg.Select(k => k.Key).Append("share")))),
                Pattern(InputNames.EventPattern(OneOf(InputNames.OfEvent.Select(k => k.Key)), "(legs|trip)")),
                Pattern(InputNames.SectionPattern(OneOf(InputNames.OfSection.Select(k => k.Key)))),
                Pattern($"^trip\\.{TripQuantities.AlreadyDriven.Key}$"),
                Pattern(InputNames.TripLegPattern(OneOf(InputNames.OfTripLeg.Select(k => k.Key)))))),
            Schema.Pair("range", Conditional(
                Table(EvidenceFormat.Range), Schema.AnyOf(EvidenceFormat.Range.Keys.Select(k => Schema.Has(k.Key))))),
            Schema.Pair("condition", Schema.AnyOf(
                Schema.Ref("range"), Schema.Type("string"), Schema.Type("number"), Schema.Array(State(), 1))),
            Schema.Pair("conditions", Conditions()),
            Schema.Pair("changes", ChangesSchema.Make()),
        ]);

    /// <summary>A table with its keys and the rules between them.</summary>
    public static JsonObject Table(TableFormat table)
    {
        JsonObject schema = Schema.Closed(
            table.Keys.Select(k => Schema.Pair(k.Key, Described(k))),
            table.Keys.Where(k => k is { IsRequired: true, Unless: null, BelongsTo: null }).Select(k => k.Key));
        if (table.Path.Length > 0 || table == ScenarioFormat.Top)
        {
            schema.Insert(0, "description", table.Meaning);
        }

        if (table.Keys.Any(k => k.Needs is not null))
        {
            schema["dependentRequired"] = new JsonObject(table.Keys.Where(k => k.Needs is not null)
                .Select(k => Schema.Pair(k.Key, Schema.Texts(k.Needs!))));
        }

        JsonObject[] rules = [.. Rules(table)];
        if (rules.Length > 0)
        {
            schema["allOf"] = Schema.List(rules);
        }

        return schema;
    }

    private static IEnumerable<JsonObject> Rules(TableFormat table)
    {
        foreach (KeyFormat key in table.Keys.Where(k => k is { IsRequired: true, Unless: not null }))
        {
            yield return Schema.AnyOf(Schema.Has(key.Key), Schema.Has(key.Unless!));
        }

        foreach (KeyChoice choice in table.Choices)
        {
            yield return choice.IsRequired
                ? new JsonObject { ["oneOf"] = Schema.List(choice.Keys.Select(k => Schema.Has(k))) }
                : new JsonObject
                {
                    ["not"] = Schema.AnyOf(
                        choice.Keys.SelectMany((k, i) => choice.Keys.Skip(i + 1).Select(other => Schema.Has(k, other)))),
                };
        }

        foreach (string owner in table.Keys.Select(k => k.BelongsTo?.Key).OfType<string>().Distinct())
        {
            string[] words = [.. table.Find(owner)!.Words];
            foreach (string word in words)
            {
                yield return OfOwner(table, owner, word, isDefault: word == words[0]);
            }
        }

        if (table.Keys.FirstOrDefault(k => k.Kind is KeyKind.Category) is { } category)
        {
            foreach (string catalogue in SnCatalogue.Catalogues)
            {
                yield return If("catalogue", catalogue, isDefault: false, new JsonObject
                {
                    ["properties"] = new JsonObject
                    {
                        [category.Key] = CategoryOf(catalogue),
                        ["environment"] = WordOrChoice(SnCatalogue.Environments(catalogue)),
                    },
                });
            }

            yield return If("catalogue", Detail.OwnCatalogue, isDefault: false, Schema.Has("curve"));
        }
    }

    // What a word of the owner brings with it and what it forbids.
    private static JsonObject OfOwner(TableFormat table, string owner, string word, bool isDefault)
    {
        KeyFormat[] owned = [.. table.Keys.Where(k => k.BelongsTo?.Key == owner)];
        JsonObject then = Schema.Has(owned.Where(k => k.IsRequired && k.BelongsTo!.Words.Contains(word)).Select(k => k.Key));
        then["properties"] = new JsonObject(owned.Where(k => !k.BelongsTo!.Words.Contains(word))
            .Select(k => Schema.Pair(k.Key, JsonValue.Create(false))));
        return If(owner, word, isDefault, then);
    }

    private static JsonObject If(string key, string word, bool isDefault, JsonObject then)
    {
        JsonObject condition = isDefault ? [] : Schema.Has(key);
        condition["properties"] = new JsonObject { [key] = new JsonObject { ["const"] = word } };
        return new JsonObject { ["if"] = condition, ["then"] = then };
    }

    private static JsonObject CategoryOf(string catalogue)
    {
        // What stands behind the last blank of a name may stand for it: the reader is asked.
        string[] names =
        [
            .. SnCatalogue.Categories(catalogue).SelectMany(c => new[] { c, c.Split(' ')[^1] }).Distinct()
                .Where(c => SnCatalogue.Find(catalogue, c) is not null),
        ];
        return WordOrChoice(names);
    }

    private static JsonObject WordOrChoice(IReadOnlyList<string> words) => Schema.AnyOf(
        Schema.Word([.. words]),
        new JsonObject
        {
            ["type"] = "object",
            ["properties"] = new JsonObject { ["values"] = new JsonObject { ["items"] = Schema.Word([.. words]) } },
        });

    /// <summary>A key with its name in plain words and what it means.</summary>
    public static JsonObject Described(KeyFormat key)
    {
        JsonObject schema = Of(key.Kind);
        schema.Insert(0, "title", key.Label);
        string unit = key.Unit.Length > 0 ? $", {key.Unit}" : "";
        string otherwise = key.IsRequired || key.Kind is KeyKind.Table or KeyKind.Tables
            ? "" : $". Not stated: {key.Otherwise.Replace("`", "", StringComparison.Ordinal)}";
        schema.Remove("description");
        schema.Insert(1, "description", $"{key.Meaning.Replace("`", "", StringComparison.Ordinal)}{unit}{otherwise}");
        if (key.Quantity?.Default is Value.Certain { Number: var number } && key.Otherwise[0] != '`')
        {
            schema["default"] = number;
        }

        return schema;
    }

    private static JsonObject Of(KeyKind kind) => kind switch
    {
        KeyKind.Number n => Schema.Number(n.Domain),
        KeyKind.Whole w => new JsonObject { ["type"] = "integer", ["minimum"] = w.Least, ["maximum"] = w.Most },
        KeyKind.Uncertain u => Schema.AnyOf(Schema.Number(u.Domain), Distribution(u.OnlyVaries)),
        KeyKind.Numbers n => Schema.Array(Schema.Number(n.Domain), n.Least, n.Most),
        KeyKind.Word w => Schema.Word(w.Words),
        KeyKind.WordOrChoice w => Schema.AnyOf(Schema.Word(w.Words), Schema.Ref(Choice)),
        KeyKind.Texts => Schema.Array(Schema.Type("string")),
        KeyKind.SomeWords w => Schema.AnyOf(Schema.Word(w.Words), Schema.Array(Schema.Word(w.Words))),
        KeyKind.Text => Schema.Type("string"),
        KeyKind.Line l => new JsonObject
        {
            ["type"] = "string",
            ["maxLength"] = l.Longest,
            ["pattern"] = @"^[^\u0000-\u001f\u007f-\u009f]*[^\s\u0000-\u001f\u007f-\u009f][^\u0000-\u001f\u007f-\u009f]*$",
        },
        KeyKind.PlainName => Pattern($"^{KeyKind.PlainName.Form}$"),
        KeyKind.InputName => Schema.Ref(Input),
        KeyKind.InputPair => Schema.Array(Schema.Ref(Input), 2, 2),
        KeyKind.Category => Schema.Ref(Category),
        KeyKind.State => State(),
        KeyKind.Conditions => Schema.Ref("conditions"),
        KeyKind.Changes => Schema.Ref("changes"),
        KeyKind.QuantilePairs => Schema.Array(Schema.Array(Schema.Type("number"), 2, 2), 2, 2),
        KeyKind.Values v => Schema.Array(Schema.Type(v.OfWords ? "string" : "number"), 1),
        KeyKind.Table t => Table(t.Of),
        KeyKind.Tables t => Schema.Array(Table(t.Of), t.Least, t.Most),
        _ => throw new InvalidOperationException($"no schema of {kind}"),
    };

    private static JsonObject Distribution(bool onlyVaries)
    {
        JsonObject distribution = Schema.Ref(DistributionSchema.Name);
        if (onlyVaries)
        {
            distribution["properties"] = new JsonObject { ["knowledge"] = new JsonObject { ["const"] = "varies" } };
        }

        return distribution;
    }

    private static JsonObject State() => new() { ["type"] = Schema.Texts("string", "number") };

    private static JsonObject Conditions()
    {
        var conditions = Schema.Closed(
            InputNames.Fixed.Concat(InputNames.Words.Select(w => w.Name)).Select(n => Schema.Pair(n, Schema.Ref("condition"))));
        conditions["patternProperties"] = new JsonObject
        {
            [InputNames.LegPattern(OneOf(InputNames.OfLeg.Select(k => k.Key).Append("share")))] = Schema.Ref("condition"),
            [InputNames.EventPattern(OneOf(InputNames.OfEvent.Select(k => k.Key)))] = Schema.Ref("condition"),
            [InputNames.SectionPattern(OneOf(InputNames.OfSection.Select(k => k.Key)))] = Schema.Ref("condition"),
        };
        conditions["minProperties"] = 1;
        return conditions;
    }

    private static JsonObject Conditional(JsonObject table, JsonObject rule)
    {
        table["allOf"] = Schema.List(rule);
        return table;
    }

    private static JsonObject Pattern(string pattern) => new() { ["type"] = "string", ["pattern"] = pattern };

    private static string OneOf(IEnumerable<string> keys) => $"({string.Join('|', keys)})";
}
