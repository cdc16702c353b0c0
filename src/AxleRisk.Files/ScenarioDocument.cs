using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files;

/// <summary>A scenario together with what identifies the text it came from.</summary>
/// <param name="Scenario">The scenario, complete and valid.</param>
/// <param name="FileName">The file it was read from, as the user named it.</param>
/// <param name="Digest">
/// SHA-256 of the scenario file's bytes in lower-case hexadecimal; where the scenario refers to data files, of those bytes
/// followed by the length (8 bytes, least first) and the bytes of each data file, in the order they are first referred to.
/// </param>
/// <param name="Sources">
/// The files it was read from, as a copy of them is laid out: the scenario first, then the data files. Read from there, the
/// scenario has the same digest.
/// </param>
public sealed record ScenarioDocument(Scenario Scenario, string FileName, string Digest, ImmutableArray<SourceFile> Sources)
{
    /// <summary>The digest of the data files alone.</summary>
    public string DataDigest { get; init; } = "";

    /// <summary>The text it was read from.</summary>
    public string Text { get; init; } = "";
}

/// <summary>One of the files that a scenario was read from.</summary>
/// <param name="Name">Where a copy of it lies, from the folder of the copied scenario, with <c>/</c> between.</param>
/// <param name="Bytes">Its bytes as they were read.</param>
public sealed record SourceFile(string Name, ReadOnlyMemory<byte> Bytes);
