using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>One key of a table of the scenario file: what the reader, the schema, the reference and forms go by.</summary>
/// <param name="Key">The key; ends in the unit where there is one.</param>
/// <param name="Label">Its name in plain words, without the unit.</param>
/// <param name="Unit">The unit as printed; empty for none.</param>
/// <param name="Kind">What may stand behind it.</param>
/// <param name="Meaning">What it is, in one sentence.</param>
public sealed record KeyFormat(string Key, string Label, string Unit, KeyKind Kind, string Meaning)
{
    /// <summary>Whether it must be stated, where it belongs and <see cref="Unless"/> is not stated.</summary>
    public bool IsRequired { get; init; }

    /// <summary>What holds where it is not stated, in words.</summary>
    public string Otherwise { get; init; } = "none";

    /// <summary>The key of the same table without which it has no meaning; null where there is none.</summary>
    public string? Needs { get; init; }

    /// <summary>The key of the same table that takes its place, so that it need not be stated; null where there is none.</summary>
    public string? Unless { get; init; }

    /// <summary>The words of another key of the same table with which alone it can be stated; null where it always can.</summary>
    public KeyOwner? BelongsTo { get; init; }

    /// <summary>The quantity that it states; null where it states none.</summary>
    public Quantity? Quantity { get; init; }

    /// <summary>A sensible start where a new table is filled in, as it is typed; empty for none.</summary>
    public string Start { get; init; } = "";

    /// <summary>Whether the values of all tables of the list add up to 1.</summary>
    public bool SumsToOne { get; init; }

    /// <summary>The words to choose from, the default first; none where it is no word.</summary>
    public ImmutableArray<string> Words => Kind switch
    {
        KeyKind.Word word => word.Words,
        KeyKind.WordOrChoice word => word.Words,
        _ => [],
    };

    /// <summary>Whether it must be stated and when, or what holds otherwise, in words.</summary>
    public string Standard => !IsRequired ? Otherwise
        : "required"
            + (BelongsTo is { } owner ? $" with `{owner.Key}` {string.Join(" or ", owner.Words.Select(w => $"`\"{w}\"`"))}" : "")
            + (Unless is { } other ? $", unless `{other}` is stated" : "");

    /// <summary>The key of a quantity.</summary>
    public static KeyFormat Of(Quantity q) => new(q.Key, q.Label, q.Unit, new KeyKind.Uncertain(q.Domain), q.Meaning)
    {
        Quantity = q,
        IsRequired = q.Default is null && q.Without is null,
        Needs = q.Needs,
        Otherwise = q.Default switch
        {
            null => $"absent: {q.Without}",
            Value.Uncertain { Distribution: Distribution d, Knowledge: var k } =>
                $"{d}, {(k == Knowledge.Varies ? "varies" : "unknown")} ({q.DefaultSource})",
            Value value => $"{value.Nominal:R} ({q.DefaultSource})",
        },
    };
}

/// <summary>A key and some of its words.</summary>
/// <param name="Key">The key.</param>
/// <param name="Words">The words.</param>
public sealed record KeyOwner(string Key, params IReadOnlyList<string> Words);
