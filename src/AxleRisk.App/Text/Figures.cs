using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Text;

/// <summary>Numbers as a reader wants them: distances in whole km, probabilities in percent while that is readable.</summary>
internal static class Figures
{
    public const string None = "-";

    private const int MostStatedDigits = 12;

    /// <summary>A distance in km, to three or four figures, with thousands separators.</summary>
    public static string Km(double km) =>
        !double.IsFinite(km) ? None : RoundTo(km, 4).ToString(Math.Abs(km) < 1 ? "0.######" : Math.Abs(km) < 100 ? "#,0.##" : "#,0");

    /// <summary>
    /// A number that somebody stated, with all of its digits and thousands separators. One of more digits than anybody states was
    /// computed (the
    /// mean of a distribution, a sum of legs): to four figures.
    /// </summary>
    public static string Exact(double x) => !double.IsFinite(x) ? None
        : Math.Abs(RoundTo(x, MostStatedDigits) - x) > 1e-14 * Math.Abs(x) ? Km(x)
        : x != 0 && (Math.Abs(x) >= 1e15 || Math.Abs(x) < 1e-6) ? x.ToString("R")
        : ((decimal)x).ToString("#,0.###############");

    /// <summary>A probability: percent down to 0.001 %, powers of ten below.</summary>
    public static string Probability(double p) =>
        double.IsNaN(p) ? None
        : p == 0 ? "0"
        : p < 1e-5 ? p.ToString("0.0e-0")
        : (100 * p).ToString(p < 1e-3 ? "0.0000" : p < 0.1 ? "0.000" : "0.00") + " %";

    /// <summary>A probability with an interval: where there is no estimate but an upper bound, that.</summary>
    public static string Probability(Interval p) => IsBound(p) ? "< " + Probability(p.High) : Probability(p.Estimate);

    /// <summary>Whether all that is known of a probability is that it lies below the upper end of its interval.</summary>
    public static bool IsBound(Interval p) => double.IsNaN(p.Estimate) && p.High < 1;

    /// <summary>
    /// How many there are for each that fails, to two figures, as people say it: 2.4, 14, 33,000 or 4.1 million.
    /// </summary>
    /// <param name="p">The probability, above 0.</param>
    /// <param name="isBound">Whether fewer fail than that: then it is rounded down, so that it stays true.</param>
    public static string OneIn(double p, bool isBound = false) => TwoFigures(1 / p, isBound) switch
    {
        < 1e6 and var n => n.ToString("#,0.#"),
        < 1e9 and var n => Number(n / 1e6) + " million",
        < VeryMany and var n => Number(n / 1e9) + " thousand million",
        _ => "ten thousand million",
    };

    private static double TwoFigures(double x, bool isDown)
    {
        double unit = Math.Pow(10, Math.Floor(Math.Log10(x)) - 1);
        return isDown ? Math.Floor((x / unit) + 1e-6) * unit : double.Parse(x.ToString("G2"));
    }

    /// <summary>Whether a probability is so small that one in so many cannot be grasped, and says no more than "hardly ever".</summary>
    public static bool IsBeyondWords(double p) => p > 0 && 1 / p >= VeryMany;

    private const double VeryMany = 1e10;

    /// <summary>The interval of a probability, both ends in one notation.</summary>
    public static string ProbabilityRange(Interval p)
    {
        double least = p.Low > 0 ? p.Low : p.High;
        return least < 1e-5
            ? $"{Power(p.Low)} to {Power(p.High)}"
            : $"{Probability(p.Low).Replace(" %", "")} to {Probability(p.High)}";

        static string Power(double x) => double.IsNaN(x) ? None : x == 0 ? "0" : x.ToString("0.0e-0");
    }

    /// <summary>The same in brackets for a place beside the estimate, the sign of percent left out.</summary>
    public static string Range(Interval p) => $"({ProbabilityRange(p).Replace(" %", "")})";

    /// <summary>A share of a whole, in percent.</summary>
    public static string Share(double share) => double.IsNaN(share) ? None : (100 * share).ToString("0.0") + " %";

    /// <summary>An index with two decimals and its interval.</summary>
    public static string Index(Interval index) =>
        double.IsNaN(index.Estimate) ? None : $"{Two(index.Estimate)} ({Two(index.Low)}..{Two(index.High)})";

    /// <summary>A pure number or a value of a factor: four figures.</summary>
    public static string Number(double x) =>
        double.IsNaN(x) ? None
        : x != 0 && (Math.Abs(x) >= 1e6 || Math.Abs(x) < 1e-3) ? x.ToString("0.###e-0")
        : RoundTo(x, 4).ToString("0.######");

    /// <summary>A ratio of lives: two decimals near 1, fewer when large.</summary>
    public static string Ratio(double ratio) =>
        double.IsNaN(ratio) ? None : double.IsInfinity(ratio) ? "inf" : ratio < 0.1 ? ratio.ToString("0.000") : ratio < 100
            ? ratio.ToString("0.00") : ratio.ToString("#,0");

    /// <summary>A probability at an axis: a round number, without digits that say nothing.</summary>
    public static string Tick(double p) => p != 0 && Math.Abs(p) < 1e-5 ? p.ToString("0e-0") : (100 * p).ToString("0.####") + " %";

    /// <summary>A cost with the scenario's currency, if it states one.</summary>
    public static string Cost(string number, string? currency) => currency is null ? number : $"{number} {Printable.Line(currency)}";

    /// <summary>A stated cost.</summary>
    public static string Cost(double cost, string? currency) => Cost(cost.ToString("#,0.##"), currency);

    /// <summary>A count with thousands separators.</summary>
    public static string Count(long n) => n.ToString("#,0");

    /// <summary>Two decimals, without a sign on a zero.</summary>
    private static string Two(double x) => (Math.Round(x, 2) + 0.0).ToString("0.00").Replace("-0.00", "0.00");

    private static double RoundTo(double x, int figures)
    {
        if (x == 0)
        {
            return 0;
        }

        int digits = figures - 1 - (int)Math.Floor(Math.Log10(Math.Abs(x)));
        return digits >= 0
            ? Math.Round(x, Math.Min(15, digits))
            : Math.Round(x / Math.Pow(10, -digits)) * Math.Pow(10, -digits);
    }
}
