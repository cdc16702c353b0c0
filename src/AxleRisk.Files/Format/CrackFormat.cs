using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>The tables of the crack, of the ways of looking for it and of the plan.</summary>
public static class CrackFormat
{
    /// <summary>The most ways of looking.</summary>
    public const int MostMethods = 8;

    /// <summary>The most looks of one.</summary>
    public const int MostLooks = 24;

    private const int MostPoints = 64;

    private static readonly string Initial = Quantities.InitialDepth.Key;

    /// <summary>The crack.</summary>
    public static TableFormat Crack { get; } = new(
        Quantities.CrackSection,
        "How deep the crack is on the way to the end of life, which is where it is through the wall: by the law of Paris and Erdogan, or by a curve of your own.",
        [
            .. FormatParts.Of(Quantities.CrackSection).Select(k => k.Key == Initial
                ? k with { Start = "0.2", Otherwise = "in place of `fractions` and `depths_mm`" } : k),
            new("fractions", "fractions of life", "", new KeyKind.Numbers(Domain.Fraction, 2, MostPoints,
                $"two to {MostPoints} numbers that rise from 0 to 1"), "your own curve: fractions of life used")
            { Needs = "depths_mm" },
            new("depths_mm", "crack depths", "mm", new KeyKind.Numbers(Domain.Positive, 2, MostPoints,
                $"as many numbers above 0 that rise, the last not above the wall"), "your own curve: the depths at these, joined by straight lines")
            { Needs = "fractions" },
            new("source", "source", "", new KeyKind.Line(200), "where depth or curve comes from; only printed"),
        ])
    {
        Choices = [new(true, Initial, "fractions")],
    };

    /// <summary>A way of looking for the crack.</summary>
    public static TableFormat Method { get; } = new(
        "inspections", "A way of looking for the crack: what it finds, what it costs, when it is done.",
        new("name", "name", "", new KeyKind.Line(40), "its name, unique") { IsRequired = true, Start = "dye penetrant" },
        new("a50_mm", "depth half found", "mm", new KeyKind.Number(Domain.Positive), "the depth that is found in half of the looks")
        { IsRequired = true, Start = "1.5" },
        new("a90_mm", "depth nine of ten found", "mm", new KeyKind.Number(Domain.Positive),
            "the depth that is found in nine looks of ten, not below `a50_mm`; where they are equal detection is a step")
        { IsRequired = true, Start = "4" },
        new("false_calls", "false calls", "", new KeyKind.Number(Domain.Fraction), "the probability that a look calls a crack where it has found none")
        { Otherwise = "0" },
        new("cost", "cost of a look", "", new KeyKind.Number(Domain.NonNegative), "what one look costs") { Otherwise = "0" },
        new("at_km", "distances", "km",
            new KeyKind.Numbers(Domain.Positive, 1, MostLooks, $"up to {MostLooks} distances above 0, such as [60000, 80000]"),
            "the distances at which it is done, below `required_km`")
        { Otherwise = "to be planned" });

    /// <summary>What a plan is judged by.</summary>
    public static TableFormat Plan { get; } = new(
        "inspection_plan", "What an inspection plan is judged by.",
        new("target", "target", "", new KeyKind.Number(Domain.OpenFraction),
            "the failure probability of a whole vehicle from one look to the next that is to be kept; asks for the fewest looks"),
        new("repair_cost", "cost of a repair", "", new KeyKind.Number(Domain.NonNegative), "what the repair of a found crack costs")
        { Otherwise = "0" },
        new("false_call_cost", "cost of a false call", "", new KeyKind.Number(Domain.NonNegative), "what a false call costs") { Otherwise = "0" },
        new("failure_cost", "cost of a failure", "", new KeyKind.Number(Domain.NonNegative), "what a failure costs; asks for the cheapest plan")
        { Otherwise = "the mean of `decision.failure_cost`, if stated" },
        new("repaired_life", "life after a repair", "", new KeyKind.Number(new Domain(0, 10, LowIncluded: false)),
            "the life of a repaired detail over that of a new one")
        { Otherwise = "1" });
}
