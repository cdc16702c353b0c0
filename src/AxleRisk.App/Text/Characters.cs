namespace AxleRisk.App.Text;

/// <summary>
/// The characters a terminal can show. Pictures are drawn with blocks, lines and dots of Unicode; where these are not to be had each
/// is replaced by a plain one of ASCII, in the same cell, so that nothing moves.
/// </summary>
internal static class Characters
{
    /// <summary>Terminals whose own characters are few: the kernel's console, and the old ones that others are named after.</summary>
    private static readonly string[] PoorTerminals = ["linux", "dumb", "vt52", "vt100", "vt102", "vt220"];

    private static readonly string[] LocaleVariables = ["LC_ALL", "LC_CTYPE", "LANG"];

    /// <summary>Whether only plain characters are shown; set when the program starts, and by a key of the console.</summary>
    public static bool ArePlain { get; set; }

    /// <summary>
    /// Whether the surroundings can show plain characters alone: by the terminal's name, or by a locale whose characters are not
    /// those of Unicode (POSIX.1-2017, 8.2: the first of LC_ALL, LC_CTYPE and LANG that is not empty). Where no locale is stated
    /// nothing is known against Unicode.
    /// </summary>
    /// <param name="variable">The value of a variable of the environment; null where it is not set.</param>
    public static bool ArePlainBy(Func<string, string?> variable)
    {
        string? locale = LocaleVariables.Select(variable).FirstOrDefault(v => v is { Length: > 0 });
        bool isUnicode = locale?.Replace("-", "", StringComparison.Ordinal).Contains("utf8", StringComparison.OrdinalIgnoreCase) ?? true;
        return !isUnicode || PoorTerminals.Contains(variable("TERM"));
    }

    /// <summary>A text as it can be shown.</summary>
    public static string Of(string text) => !ArePlain || text.All(char.IsAscii) ? text : string.Concat(text.Select(Plain));

    /// <summary>The plain character nearest to one; a question mark where none is.</summary>
    public static char Plain(char c) => c switch
    {
        _ when char.IsAscii(c) => c,
        '─' or '━' or '╌' or '┄' or '═' => '-',
        '│' or '┃' or '┆' or '║' or '┤' or '├' => '|',
        '█' or '▓' or '▉' or '▊' or '▋' or '▇' or '▆' or '▅' => '#',
        '▒' or '▌' or '▍' or '▄' or '▃' => '=',
        '░' or '▎' or '▏' or '▂' or '▁' or '·' => '.',
        '►' or '▶' or '→' => '>',
        '◄' or '◀' or '←' => '<',
        '▲' or '↑' => '^',
        '▼' or '↓' => 'v',
        >= '\u2500' and <= '\u257F' => '+',
        > '\u2800' and <= '\u28FF' => '*',
        _ => '?',
    };
}
