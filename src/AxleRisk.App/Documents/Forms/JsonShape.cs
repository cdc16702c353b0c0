using System.Collections.Immutable;

namespace AxleRisk.App.Documents.Forms;

/// <summary>What may stand behind a key of a JSON document.</summary>
internal abstract record JsonShape
{
    private JsonShape()
    {
    }

    /// <summary>A number.</summary>
    public sealed record Number : JsonShape;

    /// <summary>A whole number.</summary>
    public sealed record Whole : JsonShape;

    /// <summary>Any text.</summary>
    public sealed record Text : JsonShape;

    /// <summary>True or false.</summary>
    public sealed record Flag : JsonShape;

    /// <summary>A text or a number.</summary>
    public sealed record TextOrNumber : JsonShape;

    /// <summary>One of a few words.</summary>
    /// <param name="Words">The words.</param>
    public sealed record Word(ImmutableArray<string> Words) : JsonShape;

    /// <summary>An object.</summary>
    /// <param name="Form">Its keys.</param>
    public sealed record Object(IJsonForm Form) : JsonShape;

    /// <summary>A list.</summary>
    /// <param name="Of">What each item is.</param>
    public sealed record List(JsonShape Of) : JsonShape;

    /// <summary>An object whose keys depend on the scenario or the question.</summary>
    /// <param name="Of">What stands behind each key.</param>
    /// <param name="MayBeNull">Whether that may be null.</param>
    public sealed record Map(JsonShape Of, bool MayBeNull = false) : JsonShape;
}

/// <summary>One key of a JSON object.</summary>
/// <param name="Name">The key.</param>
/// <param name="Shape">What stands behind it.</param>
/// <param name="Meaning">What it is, with its unit.</param>
internal sealed record JsonKey(string Name, JsonShape Shape, string Meaning)
{
    /// <summary>Whether it may be null.</summary>
    public bool IsNullable { get; init; }

    /// <summary>Whether it may be left out.</summary>
    public bool IsOptional { get; init; }
}

/// <summary>The keys of a JSON object.</summary>
internal interface IJsonForm
{
    /// <summary>A name for an object that stands in several places; null for one that stands in one place alone.</summary>
    string? Name { get; }

    /// <summary>The keys, in the order they are written.</summary>
    IReadOnlyList<JsonKey> Keys { get; }
}
