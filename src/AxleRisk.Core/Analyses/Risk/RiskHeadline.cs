using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>
/// The failure probability by a distance as the risk study gives it: the one figure that every answer shows for it. What another
/// analysis finds with a sample of its own is told as a change from it.
/// </summary>
/// <param name="DistanceKm">The distance, km.</param>
/// <param name="Probability">P(life &lt; distance) with its 95 % interval.</param>
/// <param name="Method">The method behind it.</param>
/// <param name="Run">The run behind it.</param>
public sealed record RiskHeadline(double DistanceKm, Interval Probability, RiskMethod Method, RunRecord Run)
{
    private const double Ln2 = 0.6931471805599453;

    /// <summary>Runs the risk study for a few distances.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="distancesKm">The distances, km, above 0.</param>
    /// <param name="settings">Those of the risk study.</param>
    /// <param name="options">Threads, cancellation; no progress is told.</param>
    /// <exception cref="StudyException">The sampling plan has fewer dimensions than the scenario has columns.</exception>
    public static ImmutableArray<RiskHeadline> Of(LifeModel model, ImmutableArray<double> distancesKm, StudySettings settings,
        RunOptions options)
    {
        (RiskResult result, _) = RiskAnalysis.Run(
            model, settings, new RiskQuestion { DistancesKm = distancesKm, IsOfProbabilities = true }, options with { Progress = null });
        return [.. distancesKm.Select(km => At(result, result.Distances.First(d => d.DistanceKm == km)))];
    }

    /// <summary>That of the required distance.</summary>
    public static RiskHeadline Of(RiskResult result) => At(result, result.AtRequired);

    /// <summary>What another, independent sample's estimate of the same probability is off, with the errors of both.</summary>
    public Interval Off(Interval own)
    {
        double off = own.Estimate - Probability.Estimate;
        double half = Math.Sqrt(Square(own.High - own.Low) + Square(Probability.High - Probability.Low)) / 2;
        return new Interval(off, off - half, off + half);
    }

    /// <summary>
    /// Whether an own sample saw what this figure tells of: its estimate lies within a factor of two. Of a rare event it may lie
    /// decades off;
    /// then what it finds in pairs cannot be told as times this.
    /// </summary>
    public bool Agrees(Interval own) => Math.Abs(Math.Log(own.Estimate / Probability.Estimate)) <= Ln2;

    /// <summary>
    /// What another case's probability is over this one, where the two are independent; normal on the scale of the logarithm.
    /// </summary>
    public Interval Under(Interval other)
    {
        double ratio = other.Estimate / Probability.Estimate;
        double error = Math.Sqrt(Square(Math.Log(other.High / other.Low)) + Square(Math.Log(Probability.High / Probability.Low))) / 2;
        return new Interval(ratio, ratio * Math.Exp(-error), ratio * Math.Exp(error));
    }

    /// <summary>This probability times a ratio found by another sample, the errors of both joined on the scale of the logarithm.</summary>
    public Interval Times(Interval ratio)
    {
        if (ratio == new Interval(1, 1, 1))
        {
            return Probability; // the same scenario again, to the last digit
        }

        double estimate = Math.Min(1, Probability.Estimate * ratio.Estimate);
        double Ln(double x, double of) => Square(Math.Log(x / of));
        double low = Math.Exp(-Math.Sqrt(Ln(Probability.Low, Probability.Estimate) + Ln(ratio.Low, ratio.Estimate)));
        double high = Math.Exp(Math.Sqrt(Ln(Probability.High, Probability.Estimate) + Ln(ratio.High, ratio.Estimate)));
        return (double.IsFinite(high) && estimate > 0
            ? new Interval(estimate, double.IsFinite(low) ? estimate * low : 0, estimate * high)
            : new Interval(estimate, Probability.Low * ratio.Low, Probability.High * ratio.High)).Within(0, 1);
    }

    private static RiskHeadline At(RiskResult result, DistanceRisk risk) => new(risk.DistanceKm, risk.Probability, risk.Method, result.Run);

    private static double Square(double x) => x * x;
}
