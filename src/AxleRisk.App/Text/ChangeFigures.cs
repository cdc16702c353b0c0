using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Text;

/// <summary>A change of a probability in one line: <c>7.42 -> 6.98 %, -0.44 (-0.47 to -0.41)</c>.</summary>
internal static class ChangeFigures
{
    /// <summary>Below this in both, powers of ten stand in place of percent.</summary>
    private const double Rare = 1e-5;

    private const int FewestDecimals = 2, MostDecimals = 5;

    /// <summary>The line; the differences of percents are in points of percent, to the figures that their interval allows.</summary>
    /// <param name="before">The probability before.</param>
    /// <param name="after">The probability after.</param>
    /// <param name="difference">The paired difference.</param>
    public static string Of(double before, double after, Interval difference)
    {
        if (!(before >= 0 && after >= 0 && double.IsFinite(difference.High - difference.Low)))
        {
            return "the change cannot be told";
        }

        double half = 100 * (difference.High - difference.Low) / 2;
        int decimals = half > 0 ? Math.Clamp((int)Math.Ceiling(-Math.Log10(half)), FewestDecimals, MostDecimals) : FewestDecimals;
        (double times, string form, string unit) = Math.Max(before, after) < Rare
            ? (1, "0.0e-0", "") : (100, "0." + new string('0', decimals), " %");
        string Signed(double x) => (times * x).ToString($"+{form};-{form};0");
        return $"{(times * before).ToString(form)} -> {(times * after).ToString(form)}{unit}, {Signed(difference.Estimate)} ({Signed(difference.Low)} to {Signed(difference.High)})";
    }
}
