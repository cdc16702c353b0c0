using System.Text.Json.Nodes;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Documents.Forms;

/// <summary>
/// A JSON object, described and written by the same list: each key with what it means and where its value comes from. A number
/// that does not exist is null.
/// </summary>
/// <typeparam name="T">What it is written of.</typeparam>
/// <param name="name">A name for an object that stands in several places.</param>
internal sealed class JsonForm<T>(string? name = null) : IJsonForm
{
    private readonly List<JsonKey> keys = [];
    private readonly List<Func<T, JsonNode?>> values = [];

    /// <inheritdoc/>
    public string? Name => name;

    /// <inheritdoc/>
    public IReadOnlyList<JsonKey> Keys => keys;

    /// <summary>Writes an object.</summary>
    public JsonObject Write(T of) => AddTo([], of);

    /// <summary>Adds the keys to an object.</summary>
    public JsonObject AddTo(JsonObject document, T of)
    {
        for (int i = 0; i < keys.Count; i++)
        {
            JsonNode? value = values[i](of);
            if (value is not null || !keys[i].IsOptional)
            {
                document[keys[i].Name] = value;
            }
        }

        return document;
    }

    /// <summary>A number that there always is.</summary>
    public JsonForm<T> Number(string key, string meaning, Func<T, double?> of) =>
        Key(key, new JsonShape.Number(), meaning, x => of(x) is double number ? Json.Number(number) : null);

    /// <summary>A number; null where there is none or it is not finite.</summary>
    public JsonForm<T> NumberOrNull(string key, string meaning, Func<T, double?> of) => Number(key, meaning, of).OrNull();

    /// <summary>A whole number.</summary>
    public JsonForm<T> Whole(string key, string meaning, Func<T, long?> of) => Key(key, new JsonShape.Whole(), meaning, x => of(x));

    /// <summary>A text.</summary>
    public JsonForm<T> Text(string key, string meaning, Func<T, string?> of) => Key(key, new JsonShape.Text(), meaning, x => of(x));

    /// <summary>One of a few words.</summary>
    public JsonForm<T> Word(string key, string meaning, IEnumerable<string> words, Func<T, string?> of) =>
        Key(key, new JsonShape.Word([.. words]), meaning, x => of(x));

    /// <summary>True or false.</summary>
    public JsonForm<T> Flag(string key, string meaning, Func<T, bool> of) => Key(key, new JsonShape.Flag(), meaning, x => of(x));

    /// <summary>An estimate with its interval.</summary>
    public JsonForm<T> Interval(string key, string meaning, Func<T, Interval> of) => Object(key, meaning, CommonForms.Interval, x => of(x));

    /// <summary>A probability that may have a bound alone.</summary>
    public JsonForm<T> Probability(string key, string meaning, Func<T, Interval> of) =>
        Object(key, meaning, CommonForms.Probability, x => of(x));

    /// <summary>An object.</summary>
    public JsonForm<T> Object<TPart>(string key, string meaning, JsonForm<TPart> form, Func<T, TPart?> of) =>
        Key(key, new JsonShape.Object(form), meaning, x => of(x) is { } part ? form.Write(part) : null);

    /// <summary>An object that there may not be: then null.</summary>
    public JsonForm<T> Maybe<TPart>(string key, string meaning, JsonForm<TPart> form, Func<T, TPart?> of)
        where TPart : struct =>
        Key(key, new JsonShape.Object(form), meaning, x => of(x) is { } part ? form.Write(part) : null).OrNull();

    /// <summary>A list of objects.</summary>
    public JsonForm<T> List<TItem>(string key, string meaning, JsonForm<TItem> form, Func<T, IEnumerable<TItem>?> of) =>
        Key(key, new JsonShape.List(new JsonShape.Object(form)), meaning, x => of(x) is { } items ? Json.List(items, form.Write) : null);

    /// <summary>A list of texts.</summary>
    public JsonForm<T> Texts(string key, string meaning, Func<T, IEnumerable<string>> of) => Key(
        key, new JsonShape.List(new JsonShape.Text()), meaning, x => Json.List(of(x), t => JsonValue.Create(t)));

    /// <summary>The keys of another form in the midst of this one.</summary>
    public JsonForm<T> With<TPart>(JsonForm<TPart> other, Func<T, TPart> of)
    {
        for (int i = 0; i < other.keys.Count; i++)
        {
            Func<TPart, JsonNode?> value = other.values[i];
            keys.Add(other.keys[i]);
            values.Add(x => value(of(x)));
        }

        return this;
    }

    /// <summary>A key of any shape.</summary>
    public JsonForm<T> Key(string key, JsonShape shape, string meaning, Func<T, JsonNode?> of)
    {
        keys.Add(new JsonKey(key, shape, meaning));
        values.Add(of);
        return this;
    }

    /// <summary>The last key may be null.</summary>
    public JsonForm<T> OrNull()
    {
        keys[^1] = keys[^1] with { IsNullable = true };
        return this;
    }

    /// <summary>The last key is left out where there is nothing behind it.</summary>
    public JsonForm<T> Optional()
    {
        keys[^1] = keys[^1] with { IsOptional = true, IsNullable = false };
        return this;
    }
}
