using System.Globalization;
using System.Text.RegularExpressions;
using AxleRisk.App.Tests.Files;
using AxleRisk.Core.Randomness;

namespace AxleRisk.App.Tests.Fuzzing;

/// <summary>
/// Texts near the shipped scenarios, a data file or a part of a study: changed at random, the same for the same seed and number.
/// </summary>
internal sealed partial class HostileTexts(ulong seed)
{
    private const int MostChanges = 4;

    private static readonly string[] Extremes =
    [
        "0", "-1", "1e300", "-1e300", "1e-300", "5e-324", "1.7e308", "nan", "inf", "-inf", "99999999999999999999", "1e-17",
        "0.9999999999999999", "\"x\"", "[]", "{}", "true", "1979-05-27", "0x7fffffff", "1_000", "\"\\u0000\"",
    ];

    private static readonly string[] Shipped = [.. Repository.Scenarios.Select(File.ReadAllText)];

    // Every line of every scenario, to stand where it does not belong.
    private static readonly string[] Lines = [.. Shipped.SelectMany(s => s.Split('\n')).Where(l => l.Length > 0).Distinct()];

    private readonly RandomStream stream = new(new StreamKey(seed, "hostile texts"));

    /// <summary>A scenario's text, changed in up to four places.</summary>
    /// <param name="number">The number of the text.</param>
    public string Scenario(long number)
    {
        var dice = new Dice(stream, number);
        return Changed(Shipped[dice.Below(Shipped.Length)], ref dice);
    }

    /// <summary>A scenario near a shipped one whose figures are changed within what may make sense: most are valid.</summary>
    /// <param name="number">The number of the text.</param>
    public string Sensible(long number)
    {
        var dice = new Dice(stream, number);
        string text = Shipped[dice.Below(Shipped.Length)];
        for (int left = 1 + dice.Below(MostChanges); left > 0; left--)
        {
            text = WithFactor(text, Math.Pow(2, dice.Below(9) - 4), ref dice);
        }

        return text;
    }

    /// <summary>Any other text, changed in up to four places.</summary>
    /// <param name="text">The text.</param>
    /// <param name="number">The number of the change.</param>
    public string Near(string text, long number)
    {
        var dice = new Dice(stream, number);
        return Changed(text, ref dice);
    }

    private static string Changed(string text, ref Dice dice)
    {
        for (int left = 1 + dice.Below(MostChanges); left > 0 && text.Length > 1; left--)
        {
            text = Change(text, ref dice);
        }

        return text;
    }

    private static string Change(string text, ref Dice dice)
    {
        string[] lines = text.Split('\n');
        int line = dice.Below(lines.Length), place = dice.Below(text.Length);
        switch (dice.Below(9))
        {
            case 0:
                return text[..place] + (char)dice.Below(256) + text[(place + 1)..];
            case 1:
                return text[..place];
            case 2:
                return text.Remove(place, Math.Min(1 + dice.Below(12), text.Length - place));
            case 3:
                return string.Join('\n', lines.Where((_, i) => i != line));
            case 4:
                return string.Join('\n', [.. lines[..line], lines[line], .. lines[line..]]);
            case 5:
                return string.Join('\n', [.. lines[..line], Lines[dice.Below(Lines.Length)], .. lines[line..]]);
            case 6:
                return WithWord(text, Lines[dice.Below(Lines.Length)], ref dice);
            case 7:
                return WithFactor(text, Math.Pow(10, dice.Below(13) - 6), ref dice);
            default:
                return WithNumber(text, _ => Extremes[place % Extremes.Length], ref dice);
        }
    }

    private static string WithFactor(string text, double factor, ref Dice dice) => WithNumber(
        text, was => double.TryParse(was, CultureInfo.InvariantCulture, out double x)
            ? (x * factor).ToString("G6", CultureInfo.InvariantCulture) : was, ref dice);

    private static string WithNumber(string text, Func<string, string> change, ref Dice dice)
    {
        MatchCollection numbers = Numbers().Matches(text);
        if (numbers.Count == 0)
        {
            return text;
        }

        Match match = numbers[dice.Below(numbers.Count)];
        return text[..match.Index] + change(match.Value) + text[(match.Index + match.Length)..];
    }

    private static string WithWord(string text, string other, ref Dice dice)
    {
        MatchCollection words = Words().Matches(text), others = Words().Matches(other);
        if (words.Count == 0 || others.Count == 0)
        {
            return text;
        }

        Match match = words[dice.Below(words.Count)];
        return text[..match.Index] + others[dice.Below(others.Count)].Value + text[(match.Index + match.Length)..];
    }

    [GeneratedRegex(@"(?<=[=\[, ])-?\d[\d._e]*")]
    private static partial Regex Numbers();

    [GeneratedRegex("[a-z_0-9-]{2,}|\"[^\"\n]*\"")]
    private static partial Regex Words();

    private ref struct Dice(RandomStream stream, long number)
    {
        private int lane;

        public int Below(int end) => (int)(stream.Word(number, lane++) % (ulong)end);
    }
}
