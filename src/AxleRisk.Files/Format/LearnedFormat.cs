using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>The table of what a scenario has learned; the program writes it.</summary>
public static class LearnedFormat
{
    private const int Most = 64;

    /// <summary>One combination of the states of unknown choices.</summary>
    public static TableFormat State { get; } = new(
        "learned.states", "One combination of the states of the choices.",
        new("of", "states", "", new KeyKind.Texts(Most), "the state of each choice, in their order") { Otherwise = "none, where there are no choices" },
        new("probability", "probability", "", new KeyKind.Number(Domain.Fraction), "how probable it is; those of all combinations add up to 1")
        { IsRequired = true },
        new("mean", "mean scores", "", new KeyKind.Numbers(Domain.Any, 0, Most, "as many numbers as there are factors"),
            "the mean of each factor, as the standard normal score of its stated distribution")
        { IsRequired = true },
        new("covariance", "covariance", "",
            new KeyKind.Numbers(Domain.Any, 0, Most * Most, "the lower triangle of the covariance of the scores, row by row"),
            "how the scores spread and hang together")
        { IsRequired = true });

    /// <summary>What was learned.</summary>
    public static TableFormat Learned { get; } = new(
        "learned", "What `learn --out` has taught the scenario; every command draws what is unknown by it.",
        new("data", "data", "", new KeyKind.Texts(Most), "SHA-256 of each file that was learned from: none is learned from twice") { IsRequired = true },
        new("choices", "choices", "", new KeyKind.Texts(Most), "the unknown choices, by name") { Otherwise = "none" },
        new("factors", "factors", "", new KeyKind.Texts(Most), "the other unknown factors, by name") { Otherwise = "none" },
        FormatParts.Many(State, Most, "combinations"));
}
