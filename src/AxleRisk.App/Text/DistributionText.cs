using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>
/// Distributions for readers: a choice as its states with their probabilities, <c>0 (40 %), 30 (60 %)</c>; the others by family
/// and parameters, as the file states them where it does.
/// </summary>
internal static class DistributionText
{
    /// <summary>The distribution of a factor.</summary>
    public static string Of(Factor factor) => factor switch
    {
        ScalarFactor { Input.Value: Value.Uncertain stated } => Of(stated),
        WordFactor { Distribution: NumberChoice choice } words => Choice(words.Words, choice.Weights),
        _ => factor.Description,
    };

    /// <summary>An uncertain value as the file states it.</summary>
    public static string Of(Value.Uncertain value) => value.Stated is { } stated ? Printable.Line(stated) : Of(value.Distribution);

    /// <summary>A value as the file states it, and where it is uncertain, why.</summary>
    public static string WithKnowledge(Value value) => value is Value.Uncertain uncertain
        ? $"{Of(uncertain)}, {uncertain.Knowledge.ToString().ToLowerInvariant()}" : Figures.Exact(value.Nominal);

    /// <summary>A distribution of numbers.</summary>
    public static string Of(Distribution distribution) => distribution is NumberChoice choice
        ? Choice([.. choice.Values.Select(v => v.ToString("G6"))], choice.Weights)
        : distribution.ToString();

    /// <summary>What a remedy makes of an input.</summary>
    public static string Of(Change change) => change switch
    {
        Change.ToValue { Value: Value.Uncertain uncertain } => $"= {Of(uncertain)}",
        Change.ToWord { Choice: { Only: null } to } => $"= {Choice(to)}",
        _ => change.Description,
    };

    /// <summary>Words with their probabilities, or the one word.</summary>
    public static string Choice(WordChoice choice) => choice.Only ?? Choice(choice.Words, choice.Weights);

    /// <summary>States with their probabilities.</summary>
    /// <param name="states">The states.</param>
    /// <param name="weights">As many probabilities, summing to 1.</param>
    public static string Choice(ImmutableArray<string> states, ImmutableArray<double> weights) =>
        string.Join(", ", states.Zip(weights, (state, weight) => $"{state} ({Figures.Number(100 * weight)} %)"));
}
