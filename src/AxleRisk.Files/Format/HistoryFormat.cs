using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>The tables of the vehicle's history.</summary>
public static class HistoryFormat
{
    /// <summary>The word for dampers that are renewed.</summary>
    public const string Dampers = "dampers";

    /// <summary>The most stretches: each is evaluated.</summary>
    public const int Most = 16;

    /// <summary>The most legs that shares can be stated of.</summary>
    private const int MostLegs = 64;

    /// <summary>A stretch.</summary>
    public static TableFormat Stretch { get; } = new(
        "history",
        "A stretch of the vehicle's past or future use, in order from the first km on; each states what is otherwise in it than in the rest of the file.",
        new("until_km", "end of the stretch", "km", new KeyKind.Number(Domain.Positive),
            "where the stretch ends and the next begins, counted from new; rises from stretch to stretch")
        { Otherwise = "open: the last stretch, and only that" },
        new("change", "changes", "", new KeyKind.Changes(),
            "what is otherwise in this stretch, as under a remedy; not the Miner sum nor a scatter, and of categories and environments one"),
        new("shares", "shares of the legs", "",
            new KeyKind.Numbers(Domain.Fraction, 1, MostLegs, "the shares of all legs in brackets, in the order of the legs"),
            "the road mix in this stretch, in the order of the legs; adds up to 1 and is certain")
        { Otherwise = "as under `use.legs`" },
        new("renewed", "renewed", "", new KeyKind.SomeWords([Dampers]),
            "what is renewed where the stretch begins: the wear of dampers counts from there"));
}
