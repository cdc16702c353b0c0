using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace AxleRisk.App.Tests.Sections.Figures;

/// <summary>A figure as it stands in a text: its value, the place of its last digit, and what the words around it make of it.</summary>
/// <param name="Text">The figure as printed.</param>
/// <param name="At">Where it begins in its text.</param>
/// <param name="Value">Its value.</param>
/// <param name="Unit">One of its last digit.</param>
/// <param name="Kind">What it is by the words around it.</param>
internal sealed partial record PrintedFigure(string Text, int At, double Value, double Unit, FigureKind Kind)
{
    private const int RoundedDigits = 4;

    /// <summary>All figures of a text.</summary>
    public static ImmutableArray<PrintedFigure> In(string text) => [.. Number().Matches(text).Select(m => Of(m, text))];

    /// <summary>Whether a number of the JSON, rounded to the digits printed, is this figure.</summary>
    /// <param name="x">The number.</param>
    /// <param name="isShare">Whether it is a share that may be printed in percent without a sign, under a heading that says so.</param>
    public bool Prints(double x, bool isShare = false) => Kind switch
    {
        FigureKind.OneIn => x > 0 && Near(TwoFigures(1 / x)),
        FigureKind.Percent => PrintsShare(x),
        _ => isShare ? PrintsShare(x) : Near(x),
    };

    /// <summary>An interval of a share that reaches beyond 0 or 1 by chance is printed as ending there.</summary>
    private bool PrintsShare(double x) =>
        Near(100 * x) || (Kind != FigureKind.HalfWidth && Value is 0 or 100 && Near(100 * Math.Clamp(x, 0, 1)));

    private bool Near(double x) => Math.Abs(x - Value) <= 0.5 * Unit * (1 + 1e-9) || (x == Value);

    private static double TwoFigures(double x) => double.Parse(x.ToString("G2"));

    private static PrintedFigure Of(Match match, string text)
    {
        string digits = match.Value.TrimStart('+').Replace(",", "", StringComparison.Ordinal);
        bool isHalfWidth = match.Value.StartsWith("+-", StringComparison.Ordinal);
        double value = double.Parse(isHalfWidth ? digits.TrimStart('-') : digits);
        string mantissa = digits.Split('e')[0];
        int decimals = mantissa.Contains('.') ? mantissa.Length - mantissa.IndexOf('.') - 1 : 0;
        int power = digits.Contains('e') ? int.Parse(digits.Split('e')[1]) : 0;
        double unit = Math.Pow(10, power - decimals);
        if (decimals == 0 && power == 0)
        {
            // A distance is rounded to four figures.
            double rounded = Math.Pow(10, Math.Max(0, mantissa.TrimStart('-').Length - RoundedDigits));
            unit = value % rounded == 0 ? rounded : 1;
        }

        string before = text[..match.Index], after = text[(match.Index + match.Length)..];
        FigureKind kind = isHalfWidth ? FigureKind.HalfWidth
            : OneIn().IsMatch(before) ? FigureKind.OneIn
            : Percent().IsMatch(after) || BehindPercent().IsMatch(before) ? FigureKind.Percent : FigureKind.Plain;
        return new PrintedFigure(match.Value, match.Index, value, unit, kind);
    }

    [GeneratedRegex(@"(?<![\p{L}\d_.])(?:\+-|[-+](?<![\d\p{L}]-))?(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?(?:e-?\d+)?(?![\p{L}\d_])")]
    private static partial Regex Number();

    [GeneratedRegex(@"one (axle |vehicle )?in $")]
    private static partial Regex OneIn();

    [GeneratedRegex(@"%\s\(([-\d.,]+ to )?$")]
    private static partial Regex BehindPercent();

    [GeneratedRegex(@"^(\s(to|and)\s[-+]?[\d.,e]+)?\s?%")]
    private static partial Regex Percent();
}

/// <summary>What a figure is by the words around it.</summary>
internal enum FigureKind
{
    /// <summary>A number as it is, or a share in percent under a heading that says so.</summary>
    Plain,

    /// <summary>A share in percent.</summary>
    Percent,

    /// <summary>The N of "one axle in N".</summary>
    OneIn,

    /// <summary>Half the width of an interval, printed after "+-".</summary>
    HalfWidth,
}
