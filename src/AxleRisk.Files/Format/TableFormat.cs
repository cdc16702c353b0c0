using System.Collections.Immutable;

namespace AxleRisk.Files.Format;

/// <summary>One table of the scenario file.</summary>
/// <param name="Path">Its name in the file, such as <c>use.legs</c>; empty for the top of the file.</param>
/// <param name="Meaning">What it states, in one sentence.</param>
/// <param name="Keys">Its keys, in the order of every list.</param>
public sealed record TableFormat(string Path, string Meaning, params ImmutableArray<KeyFormat> Keys)
{
    /// <summary>Keys of which one alone can be stated.</summary>
    public ImmutableArray<KeyChoice> Choices { get; init; } = [];

    /// <summary>The key of a name; null where there is none.</summary>
    public KeyFormat? Find(string key) => Keys.FirstOrDefault(k => k.Key == key);

    /// <summary>Two tables in one.</summary>
    public TableFormat With(params IEnumerable<KeyFormat> keys) => this with { Keys = [.. Keys, .. keys] };
}

/// <summary>Keys of which one alone can be stated.</summary>
/// <param name="IsRequired">Whether one must be.</param>
/// <param name="Keys">The keys.</param>
public sealed record KeyChoice(bool IsRequired, params IReadOnlyList<string> Keys);
