using System.Collections.Immutable;
using AxleRisk.Core.Distributions;

namespace AxleRisk.Core.Scenarios;

/// <summary>One of a few words, or several with weights: a weld category, an environment.</summary>
/// <param name="Words">The possible words, best first.</param>
/// <param name="Weights">Their probabilities, summing to 1; one weight of 1 where the word is certain.</param>
/// <param name="Knowledge">Whether an uncertain word varies between vehicles or is unknown.</param>
public sealed record WordChoice(ImmutableArray<string> Words, ImmutableArray<double> Weights, Knowledge Knowledge = Knowledge.Unknown)
{
    /// <summary>The one word; null where there are several.</summary>
    public string? Only => Words is [var only] ? only : null;

    /// <summary>
    /// The index of the word of the base case: the median, as of every other factor, that is the first with which the weights add up
    /// to half.
    /// </summary>
    public int NominalIndex => Spread is { } spread ? (int)spread.Median : 0;

    /// <summary>The word of the base case.</summary>
    public string Nominal => Words[NominalIndex];

    /// <summary>The choice among the indices of the words; null where the word is certain.</summary>
    public NumberChoice? Spread => Words.Length > 1 ? new([.. Words.Select((_, i) => (double)i)], [.. Weights]) : null;

    /// <summary>A word that is certain.</summary>
    public static WordChoice Sure(string word) => new([word], [1]);

    /// <summary>The word, or the words with their weights: <c>E 0.7, F 0.3</c>.</summary>
    public override string ToString() => Only ?? string.Join(", ", Words.Zip(Weights, (word, weight) => $"{word} {weight:0.###}"));
}
