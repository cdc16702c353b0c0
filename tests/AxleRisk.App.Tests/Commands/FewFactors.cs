using System.Text.RegularExpressions;

namespace AxleRisk.App.Tests.Commands;

/// <summary>
/// The benchmark scenario with few factors, for tests that want a whole report soon: the wall and what concerns fatigue stay
/// uncertain.
/// </summary>
internal static partial class FewFactors
{
    /// <summary>A file of it, with more at its end, and at its head.</summary>
    public static string With(string more, string head = "") => Cli.Temporary(head + Text() + more);

    /// <summary>A file of it whose wall corrodes, so that the vehicle ages; with more at its end.</summary>
    public static string AgeingWith(string more) =>
        Cli.Temporary(Text().Replace("\nwall_mm", "\ncorrosion_mm_per_100000_km = 0.1\nwall_mm", StringComparison.Ordinal) + more);

    private static string Text() =>
        Others().Replace(File.ReadAllText(Cli.Shipped("benchmark-five-legs")), m => m.Groups[1].Value + m.Groups[2].Value);

    [GeneratedRegex(@"^((?!wall|miner|log10|stress)\w+ = )\{ distribution = .*?(?:mean|median) = ([\d.]+).*?\}", RegexOptions.Multiline)]
    private static partial Regex Others();
}
