using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace AxleRisk.Files.Writing;

/// <summary>Keys, texts and numbers as TOML 1.0 writes them.</summary>
internal static partial class TomlText
{
    /// <summary>Whether a text is a decimal number of TOML.</summary>
    public static bool IsNumber(string text) =>
        NumberForm().IsMatch(text) && (text.AsSpan().IndexOfAny(".eE") >= 0 || Math.Abs(Parse(text)) < 1e15);

    /// <summary>The shortest text that reads back the same number.</summary>
    public static string OfNumber(double number) =>
        double.IsNaN(number) ? "nan"
        : double.IsInfinity(number) ? (number > 0 ? "inf" : "-inf")
        : number.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>A number in the manner of the one it replaces: as many decimals or more, and thousands apart where they were.</summary>
    public static string InTheMannerOf(string old, double number)
    {
        string text = OfNumber(number);
        if (!IsNumber(old) || !double.IsFinite(number) || text.Contains('E') || old.AsSpan().IndexOfAny("eE") >= 0)
        {
            return text;
        }

        int missing = Decimals(old) - Decimals(text);
        if (missing > 0)
        {
            text += (text.Contains('.') ? "" : ".") + new string('0', missing);
        }

        return old.Contains('_') ? Grouped(text) : text;
    }

    /// <summary>A text in quotes.</summary>
    public static string Quote(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (char c in text)
        {
            _ = c switch
            {
                '"' => quoted.Append("\\\""),
                '\\' => quoted.Append("\\\\"),
                '\n' => quoted.Append("\\n"),
                '\t' => quoted.Append("\\t"),
                '\r' => quoted.Append("\\r"),
                _ when char.IsControl(c) => quoted.Append($"\\u{(int)c:X4}"),
                _ => quoted.Append(c),
            };
        }

        return quoted.Append('"').ToString();
    }

    /// <summary>A key, in quotes where it needs them.</summary>
    public static string Key(string key) => BareKey().IsMatch(key) ? key : Quote(key);

    private static double Parse(string text) => double.Parse(text.Replace("_", ""), CultureInfo.InvariantCulture);

    private static int Decimals(string text) => text.IndexOf('.') is >= 0 and int point ? text.Length - point - 1 : 0;

    private static string Grouped(string text)
    {
        int end = text.IndexOf('.') is >= 0 and int point ? point : text.Length;
        for (int i = end - 3; i > (text[0] == '-' ? 1 : 0); i -= 3)
        {
            text = text.Insert(i, "_");
        }

        return text;
    }

    [GeneratedRegex(@"\A[+-]?(0|[1-9](_?[0-9])*)(\.[0-9](_?[0-9])*)?([eE][+-]?[0-9](_?[0-9])*)?\z")]
    private static partial Regex NumberForm();

    [GeneratedRegex(@"\A[A-Za-z0-9_-]+\z")]
    private static partial Regex BareKey();
}
