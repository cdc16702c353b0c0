using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace AxleRisk.App.Tests.Sections.Figures;

/// <summary>One object of a JSON document: what it is of, and its numbers.</summary>
/// <param name="Class">Its path, with <c>*</c> for what is one of many.</param>
/// <param name="Labels">The texts that say what it is of, those of the objects around it among them.</param>
/// <param name="Numbers">Its numbers, those of the objects in it among them, by their path from here.</param>
internal sealed record KnownObject(string Class, HashSet<string> Labels, IReadOnlyDictionary<string, double> Numbers);

/// <summary>The numbers of JSON documents, object by object.</summary>
internal sealed partial class KnownNumbers
{
    /// <summary>Names and words; longer texts are told in sentences of their own.</summary>
    private const int LongestLabel = 100;

    /// <summary>Texts of up to this length may hold numbers that are told of: a state, a limit in words, what a remedy changes.</summary>
    private const int LongestWords = 120;

    /// <summary>Objects of a list of so few need not be named by the text that tells of them.</summary>
    private const int Few = 8;

    private const string Document = "document";

    private readonly IReadOnlyDictionary<string, double> asked;

    private const double AskedVariation = 0.05;

    private readonly Func<string, string> labelOf;
    private readonly List<KnownObject> objects = [];
    private readonly List<KnownObject> unnamed = [];
    private readonly ILookup<string, KnownObject> byLabel;
    private readonly ILookup<double, KnownObject> byKey;

    /// <param name="documents">The documents.</param>
    /// <param name="labelOf">The plain words for the key of an input.</param>
    /// <param name="asked">What each command was asked for.</param>
    public KnownNumbers(IEnumerable<JsonObject> documents, Func<string, string> labelOf, IReadOnlyDictionary<string, double> asked)
    {
        this.asked = asked;
        this.labelOf = labelOf;
        foreach (JsonObject document in documents)
        {
            Add(document, Document, [], isOfFew: true);
        }

        byLabel = objects.SelectMany(o => o.Labels.Select(l => (Label: l, Object: o))).ToLookup(x => x.Label, x => x.Object);
        byKey = objects.SelectMany(o => o.Numbers.Where(n => n.Key is "distance_km" or "month" or "km" or "end_km")
            .Select(n => (Key: Key(n.Value), Object: o))).ToLookup(x => x.Key, x => x.Object);
    }

    /// <summary>Every label.</summary>
    public IEnumerable<string> Labels => byLabel.Select(g => g.Key);

    /// <summary>The objects that have a label.</summary>
    public IEnumerable<KnownObject> Named(string label) => byLabel[label];

    /// <summary>The objects that are of a distance or a month.</summary>
    public IEnumerable<KnownObject> At(double key) => byKey[Key(key)];

    /// <summary>Those that a text need not name: the documents themselves and the objects of short lists.</summary>
    public IReadOnlyList<KnownObject> Unnamed => unnamed;

    private Dictionary<string, double> Add(JsonObject node, string path, IEnumerable<string> around, bool isOfFew)
    {
        HashSet<string> labels = [.. around, .. node.SelectMany(p => TextsOf(p.Value))];
        var numbers = new Dictionary<string, double>();
        foreach ((string name, JsonNode? value) in node)
        {
            switch (value)
            {
                case JsonValue v when v.TryGetValue(out double x):
                    numbers[name] = x;
                    break;
                case JsonValue v when v.TryGetValue(out string? text) && text.Length <= LongestWords:
                    foreach (PrintedFigure figure in PrintedFigure.In(text))
                    {
                        numbers[$"{name}, at {figure.At}"] = figure.Kind == FigureKind.Percent ? figure.Value / 100 : figure.Value;
                    }

                    break;
                case JsonObject one:
                    string shown = LifeName().IsMatch(name) ? "*" : name;
                    foreach ((string key, double x) in Add(one, $"{path}.{shown}", shown == "*" ? labels.Append(name) : labels, isOfFew))
                    {
                        numbers[$"{name}.{key}"] = x;
                    }

                    break;
                case JsonArray list:
                    numbers[$"{name}.count"] = list.Count;
                    for (int i = 0; i < list.Count; i++)
                    {
                        if (list[i] is JsonObject item)
                        {
                            foreach ((string key, double x) in
                                Add(item, $"{path}.{name}*", labels.Append($"{name} {i + 1}"), isOfFew && list.Count <= Few)
                                    .Where(n => n.Key.EndsWith(".count", StringComparison.Ordinal)))
                            {
                                numbers[$"{name}.{key}"] = numbers.GetValueOrDefault($"{name}.{key}") + x;
                            }
                        }
                        else if (list[i] is JsonValue v && v.TryGetValue(out double x))
                        {
                            numbers[$"{name}[{i}]"] = x;
                        }
                    }

                    break;
            }
        }

        if (path == Document && asked.TryGetValue((string)node["command"]!, out double evaluations))
        {
            numbers["evaluations asked for"] = evaluations;
            numbers["cases"] = (string)node["command"]! switch
            {
                "remedies" => 1 + numbers["remedies.count"],
                "decide" => numbers["options.count"],
                _ => 1,
            };
        }

        Derive(numbers);
        var known = new KnownObject(path, labels, numbers);
        objects.Add(known);
        if (isOfFew)
        {
            unnamed.Add(known);
        }

        return numbers;
    }

    /// <summary>What is printed in another unit than the JSON has.</summary>
    private static void Derive(Dictionary<string, double> numbers)
    {
        foreach ((string key, double above) in numbers.Where(n => n.Key.EndsWith("_high", StringComparison.Ordinal)).ToArray())
        {
            if (numbers.TryGetValue(key[..^"high".Length] + "low", out double below))
            {
                numbers[key[..^"high".Length] + "half width"] = (above - below) / 2;
            }
        }

        if (numbers.TryGetValue("low", out double low) && numbers.TryGetValue("high", out double high))
        {
            numbers["half width"] = (high - low) / 2;
        }

        if (numbers.TryGetValue("direction_cosine", out double cosine))
        {
            numbers["share of the way"] = cosine * cosine;
        }

        if (numbers.TryGetValue("search_evaluations", out double search) && numbers.TryGetValue("sampling_evaluations", out double sampling))
        {
            // The run stops at the coefficient of variation asked for, or below it. As many as counting would need for it: that of a
            // share p of n is sqrt((1 - p) / (p n)).
            double p = numbers["probability.estimate"], variation = Math.Max(AskedVariation, numbers["coefficient_of_variation"]);
            numbers["evaluations more"] = search + sampling;
            numbers["evaluations by counting"] = (1 - p) / (p * variation * variation);
        }

        if (numbers.TryGetValue("damage_per_km", out double damage))
        {
            numbers["damage per 1,000 km"] = 1000 * damage;
        }
    }

    /// <summary>A distance that was worked out may be off in its last digit.</summary>
    private static double Key(double x) => double.Parse(x.ToString("G12"));

    private IEnumerable<string> TextsOf(JsonNode? value)
    {
        switch (value)
        {
            case JsonValue v when v.TryGetValue(out string? text) && text.Length is > 0 and <= LongestLabel:
                return [text, labelOf(text), string.Join(", ", text.Split(", ").Select(Said))];
            case JsonArray list when list.Count > 0 && list.All(i => i is JsonValue v && v.TryGetValue(out string? _)):
                string[] texts = [.. list.Select(i => (string)i!)];
                return [string.Join(" + ", texts), string.Join(" and ", texts)];
            default:
                return [];
        }
    }

    /// <summary>A key and its value with the key in plain words.</summary>
    private string Said(string part) => part.LastIndexOf(' ') is > 0 and int space ? labelOf(part[..space]) + part[space..] : part;

    [GeneratedRegex(@"^B[\d.]+$")]
    private static partial Regex LifeName();
}
