namespace AxleRisk.Core.Randomness;

/// <summary>
/// The name of one stream of random numbers: the study's seed and what the numbers are for. Two streams of different
/// names are independent; adding a factor does not shift the numbers of the others.
/// </summary>
/// <param name="Seed">The study's seed.</param>
/// <param name="Name">What the stream is for: a factor's name, with a suffix where one factor needs several streams.</param>
/// <param name="Part">A part of the name after a stroke, so that a block need not join the two; may be empty.</param>
internal readonly record struct StreamKey(ulong Seed, string Name, string Part = "")
{
    /// <summary>The hash of the whole name.</summary>
    public ulong Hash => Part.Length == 0 ? StableHash.Of(Name) : StableHash.Of(Name, "/", Part);
}
