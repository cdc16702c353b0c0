using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Text;

/// <summary>The failure probability as the risk study gives it, and what an analysis' own sample says of it.</summary>
internal static class HeadlineText
{
    /// <summary>How far an analysis' own sample is off, in a sentence.</summary>
    public static string Own(RiskHeadline headline, Interval own) => double.IsNaN(headline.Off(own).Estimate)
        ? $"As risk gives it ({Run(headline)})."
        : $"As risk gives it ({Run(headline)}); this analysis' own sample: {Points(headline.Off(own))} percentage points.";

    /// <summary>A difference of probabilities in percentage points, to two figures of its interval's width.</summary>
    public static string Points(Interval d)
    {
        double width = 100 * (d.High - d.Low);
        int decimals = width > 0 && double.IsFinite(width) ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(width)), 0, 8) : 2;
        string digits = decimals == 0 ? "0" : "0." + new string('0', decimals);
        string Signed(double x) => (100 * x).ToString($"+{digits};-{digits};0");
        return $"{Signed(d.Estimate)} ({Signed(d.Low)} to {Signed(d.High)})";
    }

    private static string Run(RiskHeadline headline) => headline.Method == RiskMethod.Importance
        ? "importance sampling"
        : $"{Figures.Count(headline.Run.Evaluations)} evaluations, {headline.Run.Sampling} sampling";
}
