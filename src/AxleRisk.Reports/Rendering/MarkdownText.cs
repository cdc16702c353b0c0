using System.Text;

namespace AxleRisk.Reports.Rendering;

/// <summary>Makes a text mean itself in Markdown (CommonMark 0.31, with the tables and links of GitHub).</summary>
internal static class MarkdownText
{
    /// <summary>What can begin or end markup anywhere. A colon and the like only so that no bare address becomes a link.</summary>
    private const string Anywhere = "\\`*_[]<>&|~$!#@";

    /// <summary>A text as it may stand at the beginning of a line or later.</summary>
    public static string Of(string text)
    {
        string plain = SafeText.Of(text).Trim();
        var safe = new StringBuilder(plain.Length + 8);
        int digits = 0;
        while (digits < plain.Length && char.IsAsciiDigit(plain[digits]))
        {
            digits++;
        }

        for (int i = 0; i < plain.Length; i++)
        {
            char c = plain[i];
            bool beginsList = (i == 0 && c is '+' or '-' or '=')
                || (i == digits && digits > 0 && c is '.' or ')' && IsSpaceOrEnd(plain, i + 1));
            bool makesLink = (c == ':' && plain.AsSpan(i).StartsWith("://"))
                || (c == '.' && i >= 3 && plain.AsSpan(i - 3, 3).Equals("www", StringComparison.OrdinalIgnoreCase));
            if (Anywhere.Contains(c) || beginsList || makesLink)
            {
                safe.Append('\\');
            }

            safe.Append(c);
        }

        return safe.ToString();
    }

    private static bool IsSpaceOrEnd(string text, int place) => place >= text.Length || text[place] == ' ';
}
