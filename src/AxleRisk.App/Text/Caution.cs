namespace AxleRisk.App.Text;

/// <summary>What every answer carries with it.</summary>
internal static class Caution
{
    public const string Sentence =
        "Caution: a linear model that compares and ranks. It does not replace measured loads, inspection, local codes "
        + "or a licensed engineer's judgement; a broken axle can kill.";

    /// <summary>What a report to hand over carries besides.</summary>
    public static IReadOnlyList<string> ForReaders { get; } =
    [
        "No figure of this report should be the sole ground for a decision about the safety of people.",
        "The answer is as good as the distributions stated: read the table of inputs before the results.",
        "The S-N tables were taken from public transcriptions of the standards; check them against the documents before relying on them.",
        "Local codes and regulations, and the judgement of a licensed engineer, come first.",
        "The program comes without warranty.",
    ];
}
