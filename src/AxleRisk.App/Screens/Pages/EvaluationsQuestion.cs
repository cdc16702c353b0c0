using System.Globalization;

namespace AxleRisk.App.Screens.Pages;

/// <summary>Asks how many evaluations a study may spend.</summary>
internal static class EvaluationsQuestion
{
    private const long Most = 10_000_000_000;

    /// <summary>What would be right.</summary>
    public static string Needed => $"a whole number from 1 to {Most:#,0}";

    /// <summary>The number; null where the reader left without one.</summary>
    public static long? Ask(IDialogs dialogs, long present) =>
        dialogs.Ask(
            "Evaluations", "How many evaluations of the damage model? Ten times as many make the interval about three times narrower.",
            present.ToString(CultureInfo.InvariantCulture), t => Number(t) is null ? Needed : null) is { } text
            ? Number(text)
            : null;

    /// <summary>The number that a text stands for; null where it is none.</summary>
    public static long? Number(string text) =>
        long.TryParse(text.Replace("_", "").Replace(" ", ""), NumberStyles.AllowThousands, CultureInfo.InvariantCulture, out long n)
            && n is >= 1 and <= Most
            ? n
            : null;
}
