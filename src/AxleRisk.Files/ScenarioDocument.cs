using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files;

/// <summary>A scenario together with what identifies the text it came from.</summary>
/// <param name="Scenario">The scenario, complete and valid.</param>
/// <param name="FileName">The file it was read from, as the user named it.</param>
/// <param name="Digest">
/// SHA-256 of the scenario file's bytes in lower-case hexadecimal; where the scenario refers to data files, of those bytes
/// followed by the length (8 bytes, least first) and the bytes of each data file, in the order they are first referred to.
/// </param>
public sealed record ScenarioDocument(Scenario Scenario, string FileName, string Digest)
{
    /// <summary>The digest of the data files alone.</summary>
    public string DataDigest { get; init; } = "";

    /// <summary>The text it was read from.</summary>
    public string Text { get; init; } = "";
}
